package sparewell.workbook.template;

import static sparewell.workbook.InputSheets.*;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;

/**
 * Example rows of the blank workbooks. Each begins with {@link #MARK}, by which the reader skips it
 * until it is changed.
 */
final class Examples {
  /** First characters of an example row. */
  static final String MARK = "Example: ";

  private static final String BLANK = "";

  private Examples() {}

  static Map<String, List<List<Object>>> rows(UnitSystem units) {
    boolean us = units == UnitSystem.US;
    String size = us ? "1/2 oz" : "14 g";
    Map<String, List<List<Object>>> map = new LinkedHashMap<>();
    map.put(
        STYLES.name(),
        List.of(
            List.of(
                MARK + "Football jig",
                "Jigs",
                ounces(0.5),
                "pieces",
                BLANK,
                money("3.99"),
                BLANK,
                BLANK,
                BLANK,
                1.5,
                0.98),
            List.of(
                MARK + "Stick worm", "Soft plastics", ounces(0.375), "packs", 10, money("7.99"), 1),
            List.of(
                MARK + "Spinning rod",
                "Rods and tools",
                ounces(13),
                "pieces",
                BLANK,
                BLANK,
                1,
                2,
                1.5)));
    map.put(
        STOCK.name(),
        List.of(
            List.of(MARK + "Football jig", size, "Brown orange", "Jig box", 4),
            List.of(
                MARK + "Stick worm",
                us ? "5 in" : "13 cm",
                "Green pumpkin",
                "Worm bag",
                2.5,
                BLANK,
                BLANK,
                BLANK,
                LocalDate.parse("2026-01-10"),
                "Packs, as Styles says")));
    map.put(
        BOXES.name(),
        List.of(
            List.of(
                MARK + "Jig box",
                "Port rear locker",
                inches(11),
                inches(7),
                inches(1.75),
                pounds(0.6),
                "red"),
            List.of(
                MARK + "Day box",
                "Step box",
                inches(14),
                inches(9),
                inches(2),
                pounds(0.9),
                "orange",
                "no",
                "yes",
                LocalDate.parse("2026-03-01"),
                14)));
    map.put(
        COMPARTMENTS.name(),
        List.of(
            List.of(
                MARK + "Port rear locker",
                inches(52),
                inches(-27),
                inches(22),
                inches(15),
                inches(9),
                pounds(60)),
            List.of(
                MARK + "Garage shelf",
                inches(0),
                inches(0),
                BLANK,
                BLANK,
                BLANK,
                BLANK,
                BLANK,
                "yes")));
    map.put(
        TRIPS.name(),
        List.of(
            List.of(
                MARK + "May two-day",
                LocalDate.parse("2026-05-09"),
                "Marrowby Reservoir",
                16.0,
                2,
                "rock")));
    map.put(STYLE_HOURS.name(), List.of(List.of(MARK + "May two-day", "Football jig", 5.5)));
    map.put(
        LOSSES.name(),
        List.of(
            List.of(MARK + "May two-day", "Football jig", size, "Brown orange", 2, "snag", "no")));
    map.put(
        RESTOCKS.name(),
        List.of(
            List.of(
                MARK + "2026-05-12",
                "Football jig",
                size,
                "Brown orange",
                "Jig box",
                4,
                money("15.96"))));
    map.put(
        TRANSFERS.name(),
        List.of(
            List.of(
                MARK + "2026-05-15",
                "Football jig",
                size,
                "Brown orange",
                2,
                "Garage shelf",
                "Jig box")));
    map.put(
        BOX_LOG.name(),
        List.of(List.of(MARK + "2026-05-15", "Jig box", "Port rear locker", "yes")));
    map.put(
        COUNTS.name(),
        List.of(List.of(MARK + "2026-05-20", "Football jig", size, "Brown orange", "Jig box", 3)));
    map.put(
        EVENTS.name(),
        List.of(
            List.of(
                MARK + "Club final",
                LocalDate.parse("2026-09-12"),
                "Lake Quillet",
                16.0,
                2,
                "grass",
                "Day box",
                24)));
    map.put(
        EVENT_PLAN.name(),
        List.of(List.of(MARK + "Club final", "Football jig", 4.0, "Brown orange, Black blue")));
    map.put(
        LOADS.name(),
        List.of(
            List.of(MARK + "Partner", pounds(175), inches(84), inches(-13), "person"),
            List.of(MARK + "Outboard motor", pounds(480), inches(-14), inches(0), "motor")));
    return map;
  }

  private static Mass ounces(double ounces) {
    return Mass.of(ounces, MassUnit.OUNCE);
  }

  private static Mass pounds(double pounds) {
    return Mass.of(pounds, MassUnit.POUND);
  }

  private static Length inches(double inches) {
    return Length.of(inches, LengthUnit.INCH);
  }

  private static BigDecimal money(String amount) {
    return new BigDecimal(amount);
  }
}
