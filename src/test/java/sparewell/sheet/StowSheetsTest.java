package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sparewell.load.LoadReport;
import sparewell.load.LoadSheet;
import sparewell.season.Boat;
import sparewell.season.FixedLoad;
import sparewell.stow.Boats;
import sparewell.stow.StowPlan;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Drawing;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

class StowSheetsTest {
  private static Boats boats() {
    return new Boats()
        .compartment("Stern locker", 60, 0, 0, 60, 50, 40)
        .compartment("Bow", 420, 0, 0)
        .box("Jigs", "Bow", 6, 30, 20, 10)
        .box("Worms", "Stern locker", 1, 30, 20, 10)
        .load("Angler", FixedLoad.Kind.PERSON, 90, 200, 0);
  }

  private static Table<?> table(ReportSheet sheet, String csvFile) {
    return sheet.blocks().stream()
        .filter(Block.Rows.class::isInstance)
        .map(block -> ((Block.Rows) block).table())
        .filter(table -> table.csvFile().equals(csvFile))
        .findFirst()
        .orElseThrow();
  }

  private static String header(Table<?> table, UnitSystem units) {
    return table.columns().stream()
        .filter(Column::inCsv)
        .map(
            column -> {
              String unit = column.format().csvUnit(units);
              return unit.isEmpty() ? column.csvName() : column.csvName() + "_" + unit;
            })
        .collect(Collectors.joining(", "));
  }

  private static <R> List<Optional<Object>> shown(Table<R> table, int row, UnitSystem units) {
    return table.columns().stream()
        .filter(Column::inCsv)
        .map(column -> column.format().shown(column.value().apply(table.rows().get(row)), units))
        .toList();
  }

  private static ReportSheet weights(Boats boats, UnitSystem units) {
    StowPlan plan = boats.plan();
    return WeightByCompartmentSheet.of(
        LoadSheet.of(boats.season(), boats.onHand(), plan), List.of(), units);
  }

  private static ReportSheet stow(Boats boats, UnitSystem units) {
    StowPlan plan = boats.plan();
    LoadReport report = LoadSheet.of(boats.season(), boats.onHand(), plan);
    return StowPlanSheet.of(plan, report, units);
  }

  private static String text(ReportSheet sheet) {
    return sheet.answer()
        + "\n"
        + sheet.blocks().stream()
            .filter(Block.Text.class::isInstance)
            .flatMap(block -> ((Block.Text) block).lines().stream())
            .map(Block.Line::text)
            .collect(Collectors.joining("\n"));
  }

  @Test
  void csvColumnsAreThoseOfTheContract() {
    ReportSheet weights = weights(boats(), UnitSystem.US);
    assertEquals(
        "compartment, boxes, weight_lb, share_pct, from_transom_in, from_centreline_in,"
            + " moment_lb_in, side_moment_lb_in, max_load_lb, volume_used_pct, status",
        header(table(weights, "weight-by-compartment.csv"), UnitSystem.US));
    assertEquals(
        "quantity, value, unit", header(table(weights, "load-summary.csv"), UnitSystem.US));
    ReportSheet stow = stow(boats(), UnitSystem.METRIC);
    assertEquals(
        "box, weight_lb, from_compartment, to_compartment, move, step, best_compartment, reason",
        header(table(stow, "stow-plan.csv"), UnitSystem.US));
    assertEquals(
        "box, weight_kg, from_compartment, to_compartment, move, step, best_compartment, reason",
        header(table(stow, "stow-plan.csv"), UnitSystem.METRIC));
    assertEquals(
        "moves, tackle_centre_in, gain_pct, gap_pct, feasible",
        header(table(stow, "stow-moves.csv"), UnitSystem.US));
  }

  /** The stow plan weighs boxes as packed; the load sheet says so, and what lies there today. */
  @Test
  void theLoadSheetTellsTodaysWeightFromThatOfPackedBoxes() {
    Boats packed = boats().stock("Jig", "Jigs", "Bow", 10, 0.1);
    StowPlan plan = packed.plan();
    LoadReport report = LoadSheet.of(packed.season(), boats().onHand(), plan);
    ReportSheet sheet = WeightByCompartmentSheet.of(report, List.of(), UnitSystem.METRIC);
    assertTrue(sheet.answer().startsWith("Once packed, the tackle weighs 8.00 kg"), sheet.answer());
    assertTrue(
        text(sheet).contains("As it all lies today the tackle weighs 7.00 kg."), text(sheet));
    Table<?> table = table(sheet, "weight-by-compartment.csv");
    assertEquals("Weight today", table.columns().get(2).heading());
    LoadReport same = LoadSheet.of(packed.season(), packed.onHand(), plan);
    ReportSheet plain = WeightByCompartmentSheet.of(same, List.of(), UnitSystem.METRIC);
    assertTrue(plain.answer().startsWith("The tackle weighs 8.00 kg"), plain.answer());
    assertFalse(text(plain).contains("today"), text(plain));
  }

  @Test
  void aHeadingNamesItsUnitOnce() {
    for (ReportSheet sheet :
        List.of(weights(boats(), UnitSystem.US), stow(boats(), UnitSystem.US))) {
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Rows rows) {
          rows.table()
              .columns()
              .forEach(c -> assertFalse(c.heading().matches(".*[^(]%.*"), c.heading()));
        }
      }
    }
  }

  @Test
  void summaryConvertsToTheAnglersUnits() {
    Table<?> us = table(weights(boats(), UnitSystem.US), "load-summary.csv");
    List<Optional<Object>> tackle = shown(us, 0, UnitSystem.US);
    assertEquals(Optional.of("tackle_weight"), tackle.get(0));
    // 1 lb = 0.45359237 kg exactly (international pound, 1959)
    assertEquals(7 / 0.45359237, (Double) tackle.get(1).orElseThrow(), 1e-5);
    assertEquals(Optional.of("lb"), tackle.get(2));
    Table<?> metric = table(weights(boats(), UnitSystem.METRIC), "load-summary.csv");
    List<Optional<Object>> centre = shown(metric, 1, UnitSystem.METRIC);
    assertEquals((6 * 420 + 60) / 7.0, (Double) centre.get(1).orElseThrow(), 1e-3);
    assertEquals(Optional.of("cm"), centre.get(2));
    assertEquals(Optional.empty(), shown(metric, 8, UnitSystem.METRIC).get(1), "plate margin");
    assertEquals(Optional.of("deg"), shown(metric, 14, UnitSystem.METRIC).get(2));
  }

  @Test
  void aMarginMayBeNegative() {
    Boat boat =
        new Boat(
            Optional.of(Boats.kg(90)), Optional.empty(), false, Optional.empty(), Optional.empty());
    ReportSheet sheet = weights(boats().boat(boat), UnitSystem.METRIC);
    Table<?> summary = table(sheet, "load-summary.csv");
    assertEquals(Optional.of(-7.0), shown(summary, 8, UnitSystem.METRIC).get(1));
    assertTrue(text(sheet).contains("OVER by 7.00 kg"), text(sheet));
  }

  @Test
  void withoutAPlateTheTextSaysNotCheckedAndNeverOk() {
    String text = text(weights(boats(), UnitSystem.METRIC));
    assertEquals(3, text.split("not checked: no plate figure", -1).length);
    assertFalse(text.contains("OK"));
    assertTrue(text.contains("The capacity plate and the maker's manual are the limit"));
    assertTrue(text.contains("wash hands"));
    assertTrue(text.contains("try a new layout at low speed first"));
    assertTrue(text.contains("left ashore instead"));
  }

  @Test
  void theTopLineSaysWhatToDo() {
    ReportSheet sheet = stow(boats(), UnitSystem.METRIC);
    assertEquals(
        "Move 1 box: the tackle's centre goes 308.6 cm aft (from 368.6 cm to 60.0 cm ahead of the"
            + " transom), 100 % of what is possible.",
        sheet.answer());
    assertTrue(text(sheet).contains("1. Move Jigs from Bow to Stern locker"), text(sheet));
    assertFalse(text(sheet).contains("speed is"), "no promise of speed");
  }

  @Test
  void theBoatIsDrawnWithinThePicture() {
    Drawing drawing =
        stow(boats(), UnitSystem.US).blocks().stream()
            .filter(Drawing.class::isInstance)
            .map(Drawing.class::cast)
            .findFirst()
            .orElseThrow();
    int areas = 0;
    for (Drawing.Shape shape : drawing.shapes()) {
      if (shape instanceof Drawing.Area area) {
        areas++;
        Drawing.Frame at = area.at();
        assertTrue(at.leftShare() >= 0 && at.leftShare() + at.widthShare() <= 1);
        assertTrue(at.topShare() >= 0 && at.topShare() + at.heightShare() <= 1);
        assertTrue(area.greyShare() >= 0 && area.greyShare() <= 1);
      }
    }
    assertEquals(3, areas, "two compartments, and the number on the arrow of the move");
    assertTrue(drawing.description().startsWith("Compartments from the transom forward: Stern"));
    List<String> captions =
        drawing.shapes().stream()
            .filter(Drawing.Caption.class::isInstance)
            .map(shape -> ((Drawing.Caption) shape).text())
            .toList();
    assertTrue(captions.contains("Bow\n13.2 lb"), captions.toString());
    assertTrue(captions.contains("Moves: 1 Jigs"), captions.toString());
    assertTrue(
        drawing.shapes().stream()
            .anyMatch(shape -> shape instanceof Drawing.Stroke stroke && stroke.arrow()));
  }

  /** A slip of the pen in a position: no plan, no picture, no centre, and which cell to mend. */
  @Test
  void aPositionOutsideAnyBoatWithholdsPlanAndPicture() {
    Boats slip =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Bow", 45_000, 0, 0)
            .box("Jigs", "Bow", 5);
    ReportSheet sheet = stow(slip, UnitSystem.US);
    assertEquals(
        "Nothing is planned: Bow is said to stand outside any boat: mend Compartments B3.",
        sheet.answer());
    assertTrue(sheet.blocks().stream().noneMatch(Drawing.class::isInstance));
    assertFalse(weights(slip, UnitSystem.US).answer().contains("centred"));
  }

  @Test
  void anEmptyBoatStillGivesBothSheets() {
    assertEquals(
        "Nothing to move: no box aboard may be moved.", stow(new Boats(), UnitSystem.US).answer());
    assertTrue(weights(new Boats(), UnitSystem.US).answer().startsWith("The tackle weighs 0.0 lb"));
  }
}
