package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacker;
import sparewell.season.Cause;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;
import sparewell.spares.BuyList;
import sparewell.spares.BuyPlanner;
import sparewell.spares.KnownForecast;
import sparewell.spares.OffSeasonPlanner;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.stock.OnHand;
import sparewell.table.Block;
import sparewell.table.Chart;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

class SparesSheetsTest {
  private final SeasonMaker maker =
      new SeasonMaker()
          .budget("10")
          .carryAtLeast(1)
          .priced("Jig", 2, "6.00")
          .plain("Frog")
          .aboard("Jig", "black", "J1", 1)
          .ashore("Jig", "black", "Tub", 1)
          .aboard("Jig", "blue", "J1", 6)
          .aboard("Frog", "", "F", 0)
          .trip("t", AS_OF.minusDays(40), 8, "Jig", 4)
          .loss("t", "Jig", "black", 2, Cause.SNAG)
          .boxedEvent("Cup", AS_OF, 8, 1, "F", OptionalInt.of(6), line("Jig", 24));
  private final KnownForecast forecast = new KnownForecast().poisson("Jig", 0.2);
  private final SparesReport spares = SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
  private final BuyList buys = BuyPlanner.plan(maker.season(), spares, forecast);
  private final ReportSheet sparesSheet = SparesSheet.of(spares, buys);
  private final ReportSheet buySheet =
      BuyListSheet.of(buys, OffSeasonPlanner.plan(maker.season(), maker.onHand(), forecast));
  private final ReportSheet packingSheet =
      EventPackingSheet.of(EventPacker.pack(maker.season(), buys.bought(), spares.eventNeeds()));

  private static Table<?> csv(ReportSheet sheet) {
    return sheet.blocks().stream()
        .map(
            block ->
                block instanceof Block.Rows rows
                    ? rows.table()
                    : block instanceof Block.FileOnly file ? file.table() : null)
        .filter(table -> table != null && !table.csvFile().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private static String header(Table<?> table) {
    return table.columns().stream()
        .filter(Column::inCsv)
        .map(column -> column.csvName() + column.format().csvUnit(UnitSystem.US))
        .collect(Collectors.joining(", "));
  }

  private static <R> List<List<String>> shown(Table<R> table) {
    return table.rows().stream()
        .map(
            row ->
                table.columns().stream()
                    .map(
                        column ->
                            column
                                .format()
                                .shown(column.value().apply(row), UnitSystem.US)
                                .map(Object::toString)
                                .orElse(""))
                    .toList())
        .toList();
  }

  private static String text(ReportSheet sheet) {
    return sheet.blocks().stream()
        .filter(Block.Text.class::isInstance)
        .flatMap(block -> ((Block.Text) block).lines().stream())
        .map(Block.Line::text)
        .collect(Collectors.joining("\n"));
  }

  /** Names and order of the columns are fixed by the workbook's contract. */
  @Test
  void filesHaveTheirColumns() {
    assertEquals("spares.csv", csv(sparesSheet).csvFile());
    assertEquals(
        "style, size, colour, aboard, ashore, planning_hours, expected_loss, run_out_chance_now,"
            + " floor, carry, run_out_chance_at_carry, reason, bring_aboard, buy_pieces, buy_packs,"
            + " cost",
        header(csv(sparesSheet)));
    assertEquals("buy-list.csv", csv(buySheet).csvFile());
    assertEquals(
        "rank, style, size, colour, packs, pieces, cost, cumulative_cost, shortage_before,"
            + " shortage_after, within_budget",
        header(csv(buySheet)));
    assertEquals("event-packing.csv", csv(packingSheet).csvFile());
    assertEquals(
        "event, style, size, colour, pieces, from_box, from_compartment, run_out_chance, short,"
            + " action, slots",
        header(csv(packingSheet)));
  }

  @Test
  void everyValueCanBeShownAndEveryHeadingExplained() {
    for (ReportSheet sheet : List.of(sparesSheet, buySheet, packingSheet)) {
      assertFalse(sheet.answer().isEmpty());
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Rows rows) {
          assertEquals(rows.table().rows().size(), shown(rows.table()).size());
          // A note hangs on its heading, which a column of the file alone does not have.
          for (Column<?> column : rows.table().columns()) {
            assertEquals(column.heading().isEmpty(), column.meaning().isEmpty(), column.heading());
          }
        }
      }
    }
  }

  @Test
  void topLinesSayWhatToDo() {
    assertTrue(
        text(sparesSheet).startsWith("Do: bring 1 piece of 1 item aboard (second table), then buy"),
        text(sparesSheet));
    assertTrue(text(sparesSheet).contains("Planned for Cup (2026-05-01, 8 hours)"));
    assertTrue(text(buySheet).contains("That is 6.00 USD of your 10.00 USD"), text(buySheet));
    assertTrue(text(buySheet).contains("lower it in Settings"), text(buySheet));
    assertTrue(text(buySheet).contains("What 20.00 USD more buys"), text(buySheet));
    assertTrue(text(buySheet).contains("1 line without a price"), text(buySheet));
    assertTrue(text(buySheet).contains("you lost 2 pieces worth 6.00 USD"), text(buySheet));
    assertTrue(
        text(packingSheet)
            .contains("Cup (2026-05-01): put 9 pieces into F, 2 of 6 slots. 1 piece short"),
        text(packingSheet));
  }

  private static String moreMoney(
      double shortBefore, double before, double shortAfter, double after) {
    BigDecimal sixty = new BigDecimal("60");
    BuyList.Point now = new BuyList.Point(sixty, shortBefore, OptionalDouble.of(before));
    BuyList.Point then = new BuyList.Point(sixty, shortAfter, OptionalDouble.of(after));
    BuyList.More.Change change = new BuyList.More.Change(new ItemId("Jig", "", "red"), 1, 2);
    BuyList.More.Change less = new BuyList.More.Change(new ItemId("Jig", "", "blue"), -1, -2);
    BuyList.More.Change also = new BuyList.More.Change(new ItemId("Jig", "", "white"), 1, 2);
    BuyList list =
        new BuyList(
            Optional.of(sixty),
            "USD",
            List.of(
                new BuyList.Line(
                    1,
                    change.item(),
                    false,
                    1,
                    2,
                    Optional.of(sixty),
                    Optional.of(sixty),
                    1,
                    0,
                    true,
                    Optional.empty(),
                    true)),
            sixty,
            sixty,
            now,
            now,
            now,
            List.of(),
            Optional.of(
                new BuyList.More(
                    new BigDecimal("20"), false, List.of(change, less, also), now, then)),
            0,
            new OnHand(List.of(), List.of(), List.of()),
            List.of());
    return text(BuyListSheet.of(list, Optional.empty()));
  }

  @Test
  void aChangeTooSmallToShowIsSaidToBeSmall() {
    String large = moreMoney(0.3, 0.6, 0.1, 0.8);
    assertTrue(
        large.contains(
            "Short of 0.10 instead of 0.30 pieces on average, chance 80 % instead of 60 %."),
        large);
    assertTrue(
        large.contains(
            "buys: 1 pack of Jig red, 1 pack of Jig white; for these, leave out 1 pack of Jig blue."),
        large);
    String small = moreMoney(0.0213, 0.9112, 0.0198, 0.9131);
    assertTrue(
        small.contains(
            "That changes little: you are short of under 0.01 pieces less on average, and the chance"
                + " of 91 % changes by less than a point."),
        small);
    assertFalse(small.contains("instead of"), small);
  }

  @Test
  void aCurveOfOnePointIsLeftOut() {
    SeasonMaker unpriced =
        new SeasonMaker()
            .carryAtLeast(1)
            .plain("Jig")
            .aboard("Jig", "", "J1", 0)
            .trip("t", AS_OF.minusDays(40), 8, "Jig", 4);
    SparesReport report = SparesPlanner.plan(unpriced.season(), unpriced.onHand(), forecast);
    ReportSheet buy =
        BuyListSheet.of(
            BuyPlanner.plan(unpriced.season(), report, forecast), java.util.Optional.empty());
    assertFalse(buy.blocks().stream().anyMatch(Chart.class::isInstance));
    // Without a price nothing can be said of what money does, but of what the pieces do.
    assertTrue(
        text(buy)
            .startsWith(
                "9 pieces, price not known, take the chance that nothing important runs out from 1"
                    + " to 97 %."),
        text(buy));
    BuyList list = BuyPlanner.plan(unpriced.season(), report, forecast);
    assertFalse(text(SparesSheet.of(report, list)).contains("budget"), "none is set");
    assertTrue(buySheet.blocks().stream().anyMatch(Chart.class::isInstance));
  }

  @Test
  void saysSoWhereThereIsNothingToDo() {
    SeasonMaker calm = new SeasonMaker().priced("Jig", 1, "6.00").aboard("Jig", "", "J1", 9);
    SparesReport report = SparesPlanner.plan(calm.season(), calm.onHand(), new KnownForecast());
    BuyList none = BuyPlanner.plan(calm.season(), report, new KnownForecast());
    assertTrue(text(SparesSheet.of(report, none)).startsWith("Nothing to do"));
    ReportSheet buy =
        BuyListSheet.of(
            BuyPlanner.plan(calm.season(), report, new KnownForecast()),
            java.util.Optional.empty());
    assertEquals("Nothing to buy: no item of the Stock sheet falls short.", text(buy));
    ReportSheet packing =
        EventPackingSheet.of(EventPacker.pack(calm.season(), calm.onHand(), report.eventNeeds()));
    assertTrue(text(packing).startsWith("No event lies ahead"));
  }
}
