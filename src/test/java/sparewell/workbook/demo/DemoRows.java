package sparewell.workbook.demo;

import static sparewell.workbook.demo.DemoBoat.inches;
import static sparewell.workbook.demo.DemoBoat.pounds;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheets;
import sparewell.workbook.demo.DemoStyle.Item;

/**
 * The demo as rows of cells, sheet by sheet, in the columns' order.
 *
 * <p>A cell is a text, a number, a date, a mass or a length; an empty text is a blank cell.
 */
public final class DemoRows {
  private static final String BLANK = "";

  private final UnitSystem units;
  private final DemoSeason season;
  private final DemoStock stock;

  private DemoRows(UnitSystem units, DemoSeason season) {
    this.units = units;
    this.season = season;
    this.stock = new DemoStock(season);
  }

  /** Rows of every input sheet, by its name. */
  public static Map<String, List<List<Object>>> of(DemoSeason season, UnitSystem units) {
    DemoRows rows = new DemoRows(units, season);
    Map<String, List<List<Object>>> map = new LinkedHashMap<>();
    map.put(InputSheets.SETTINGS.name(), rows.settings());
    map.put(InputSheets.STYLES.name(), rows.styles());
    map.put(InputSheets.STOCK.name(), rows.stock());
    map.put(InputSheets.BOXES.name(), rows.boxes());
    map.put(InputSheets.COMPARTMENTS.name(), rows.compartments());
    map.put(InputSheets.TRIPS.name(), rows.trips());
    map.put(InputSheets.STYLE_HOURS.name(), rows.styleHours());
    map.put(InputSheets.LOSSES.name(), rows.losses());
    map.put(InputSheets.RESTOCKS.name(), rows.restocks());
    map.put(InputSheets.EVENTS.name(), DemoEvents.EVENTS);
    map.put(InputSheets.EVENT_PLAN.name(), DemoEvents.PLAN);
    map.put(InputSheets.LOADS.name(), rows.loads());
    map.put(InputSheets.BOAT.name(), boat());
    return map;
  }

  private List<List<Object>> settings() {
    List<List<Object>> rows = new ArrayList<>();
    for (InputColumn row : InputSheets.SETTING_ROWS.columns()) {
      Object value =
          switch (row.name()) {
            case "As of" -> DemoSeason.AS_OF;
            case "Stock counted on" -> DemoSeason.AS_OF.minusDays(1);
            case "Budget" -> 250;
            default -> BLANK;
          };
      rows.add(List.of(row.name(), value));
    }
    return rows;
  }

  private List<List<Object>> styles() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoStyle style : DemoTackle.STYLES) {
      rows.add(
          List.of(
              style.name(),
              style.family(),
              style.sizes().get(0).mass(),
              style.packs() ? "packs" : "pieces",
              style.packs() ? style.piecesPerPack() : BLANK,
              BigDecimal.valueOf(style.price()),
              style.carryAtLeast() < 0 ? BLANK : style.carryAtLeast(),
              style.neededAtOnce() == 0 ? BLANK : style.neededAtOnce(),
              style.neededAtOnce() == 0 || style.spareFactor() == 1 ? BLANK : style.spareFactor(),
              style.importance() == 1 ? BLANK : style.importance(),
              style.name().equals("Football jig") ? 0.98 : BLANK));
    }
    return rows;
  }

  private List<List<Object>> stock() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoStock.Row row : stock.rows) {
      Item item = row.item();
      boolean own = item.size() != item.style().sizes().get(0);
      boolean large = item.size().us().equals("3/4 oz") && item.style().packs();
      rows.add(
          List.of(
              item.style().name(),
              size(item),
              item.colour(),
              row.place(),
              count(item.style(), row.pieces()),
              own ? item.size().mass() : BLANK,
              large ? money(item.style().price() + 1.5) : BLANK,
              BLANK,
              row.counted() ? DemoStock.COUNTED_ON : BLANK,
              row.note()));
    }
    return rows;
  }

  private List<List<Object>> boxes() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoBoat.Case box : DemoBoat.CASES) {
      rows.add(
          List.of(
              box.name(),
              box.bay(),
              inches(box.length()),
              inches(box.width()),
              inches(box.height()),
              pounds(box.emptyWeight()),
              box.tape(),
              box.staysPut() ? "yes" : BLANK,
              box.atHand() ? "yes" : BLANK,
              box.lastChecked().isEmpty() ? BLANK : LocalDate.parse(box.lastChecked()),
              box.checkEvery() == 0 ? BLANK : box.checkEvery()));
    }
    return rows;
  }

  private List<List<Object>> compartments() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoBoat.Bay bay : DemoBoat.BAYS) {
      rows.add(
          List.of(
              bay.name(),
              inches(bay.fromTransom()),
              inches(bay.fromCentreline()),
              inches(bay.length()),
              inches(bay.width()),
              inches(bay.height()),
              pounds(bay.maxLoad()),
              bay.atHand() ? "yes" : BLANK,
              bay.ashore() ? "yes" : BLANK));
    }
    return rows;
  }

  private List<List<Object>> trips() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoSeason.Outing outing : season.outings()) {
      rows.add(
          List.of(
              outing.id(),
              outing.date(),
              outing.water(),
              outing.hours(),
              outing.days(),
              outing.coverLogged() ? outing.cover() : BLANK,
              outing.note()));
    }
    return rows;
  }

  private List<List<Object>> styleHours() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoSeason.Outing outing : season.outings()) {
      if (outing.hoursLogged()) {
        outing
            .styleHours()
            .forEach((style, hours) -> rows.add(List.of(outing.id(), style.name(), hours)));
      }
    }
    return rows;
  }

  private List<List<Object>> losses() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoSeason.LossRow loss : season.losses()) {
      Item item = loss.item();
      rows.add(
          List.of(
              loss.outing().id(),
              item.style().name(),
              size(item),
              item.colour(),
              loss.lost(),
              loss.cause(),
              loss.ranOut() ? "yes" : BLANK,
              BLANK));
    }
    return rows;
  }

  private List<List<Object>> restocks() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoStock.Purchase purchase : stock.purchases) {
      Item item = purchase.item();
      DemoStyle style = item.style();
      rows.add(
          List.of(
              purchase.date(),
              style.name(),
              size(item),
              item.colour(),
              purchase.place(),
              count(style, purchase.pieces()),
              money(style.price() * purchase.pieces() / style.piecesPerPack())));
    }
    return rows;
  }

  private List<List<Object>> loads() {
    List<List<Object>> rows = new ArrayList<>();
    for (DemoBoat.Weight weight : DemoBoat.WEIGHTS) {
      rows.add(
          List.of(
              weight.name(),
              pounds(weight.pounds()),
              inches(weight.fromTransom()),
              inches(weight.fromCentreline()),
              weight.kind()));
    }
    return rows;
  }

  private static List<List<Object>> boat() {
    List<List<Object>> rows = new ArrayList<>();
    for (InputColumn row : InputSheets.BOAT_ROWS.columns()) {
      Object value =
          switch (row.name()) {
            case "Plate weight" -> pounds(1750);
            case "Plate persons weight" -> pounds(650);
            case "Plate includes motor" -> "yes";
            case "Trim test weight", "Heel test weight" -> pounds(175);
            case "Trim test distance" -> inches(96);
            case "Trim test bow change" -> inches(1.75);
            case "Heel test distance" -> inches(26);
            case "Heel test angle (deg)" -> 2.1;
            default -> BLANK;
          };
      rows.add(List.of(row.name(), value));
    }
    return rows;
  }

  private String size(Item item) {
    return units == UnitSystem.US ? item.size().us() : item.size().metric();
  }

  private static Object count(DemoStyle style, int pieces) {
    if (!style.packs()) {
      return pieces;
    }
    return BigDecimal.valueOf(pieces)
        .divide(BigDecimal.valueOf(style.piecesPerPack()), 3, RoundingMode.UNNECESSARY)
        .stripTrailingZeros();
  }

  private static BigDecimal money(double amount) {
    return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP);
  }
}
