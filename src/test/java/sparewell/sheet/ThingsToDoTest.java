package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.sheet.AfterTripSheetTest.STOCK;
import static sparewell.sheet.AfterTripSheetTest.plenty;
import static sparewell.sheet.AfterTripSheetTest.results;
import static sparewell.sheet.AfterTripSheetTest.toDo;
import static sparewell.sheet.AfterTripSheetTest.toDoLines;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.Box;
import sparewell.season.SeasonMaker;
import sparewell.table.Block;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** The list of things to do on the front page. */
class ThingsToDoTest {
  @Test
  void saysThatThereIsNothingToDo() {
    List<String> lines = toDo(results(plenty()));
    assertEquals(2, lines.size(), lines.toString());
    assertTrue(lines.get(1).startsWith("Nothing to do"), lines.get(1));
  }

  @Test
  void tellsWhatToFillInWhereNothingIs() {
    List<Block.Line> lines = toDoLines(results(new SeasonMaker()));
    assertEquals(
        List.of("Compartments", "Styles", "Stock"),
        lines.stream().flatMap(line -> line.link().stream()).map(Cell::sheet).toList());
    assertTrue(lines.get(1).text().startsWith("1. Say where things can be"), lines.toString());
  }

  @Test
  void leadsToTheRowOfEachThing() {
    SeasonMaker maker =
        plenty()
            .aboard("Jig", "blue", "J1", 0)
            .ashore("Jig", "blue", "Tub", 5)
            .aboard("Jig", "red", "J1", 0);
    maker.boxes = List.of(dueBox("Crank; deep"));
    Results results = results(maker, maker.season(), List.of(), Optional.empty());
    List<ReportSheet> sheets = ReportSheets.of(results).sheets();
    List<Block.Line> lines = ((Block.Text) sheets.get(0).blocks().get(0)).lines();
    Block.Line bring = line(lines, " Jig blue, from Tub to J1");
    assertEquals(cell(sheets, "Spares", 2, 0), bring.link());
    Block.Line buy = line(lines, "2 packs of Jig red, 12.00 USD");
    assertEquals(cell(sheets, "Buy list", 0, 0), buy.link());
    Block.Line check = line(lines, "Crank; deep, due on " + AS_OF.minusDays(1));
    assertEquals(Optional.of(new Cell("Boxes", 4, 1)), check.link());
    line(lines, "3. Check 1 box:");
  }

  /** Words are never cut: a name may hold any mark. */
  private static Box dueBox(String name) {
    return new Box(
        name,
        "Bow",
        Optional.empty(),
        Optional.empty(),
        "",
        false,
        false,
        Optional.of(AS_OF.minusDays(31)),
        OptionalInt.of(30),
        new Cell("Boxes", 4, 1));
  }

  static Block.Line line(List<Block.Line> lines, String words) {
    return lines.stream()
        .filter(line -> line.text().contains(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError(words + " not in " + lines));
  }

  /** Cell of a row of a table of a sheet, both counted from 0. */
  private static Optional<Cell> cell(List<ReportSheet> sheets, String name, int number, int row) {
    ReportSheet sheet =
        sheets.stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
    Table<?> table =
        sheet.blocks().stream()
            .filter(Block.Rows.class::isInstance)
            .map(block -> ((Block.Rows) block).table())
            .skip(number)
            .findFirst()
            .orElseThrow();
    return Layout.cellOf(sheet, table, row);
  }

  @Test
  void anEventFishedButNotLoggedIsAskedFor() {
    SeasonMaker maker =
        plenty()
            .event("Old cup", AS_OF.minusDays(60), 8, 1)
            .event("Cup", AS_OF.minusDays(3), 16, 2)
            .event("Next cup", AS_OF.plusDays(9), 8, 1);
    List<String> lines = toDo(results(maker));
    assertTrue(
        lines.get(1).startsWith("1. Log Cup (" + AS_OF.minusDays(3) + "): no trip of that time"));
    assertFalse(String.join("\n", lines).contains("ld cup"), lines.toString());
    maker.trip("second day", AS_OF.minusDays(2), 8, "Jig", 4);
    assertFalse(String.join("\n", toDo(results(maker))).contains("Log Cup"));
  }

  @Test
  void whatIsBoughtOnAGuessIsCalledSo() {
    SeasonMaker maker = plenty().carryAtLeast(2).plain("Net").aboard("Net", "", "J1", 1);
    Finding blank = Finding.of(Code.NO_TRIPS_TO_FIT, Cell.ofSheet("Trips"));
    String guess = "No trip is logged yet, so this rests on a guess";
    assertTrue(String.join("\n", toDo(results(maker, blank))).contains(guess));
    assertFalse(String.join("\n", toDo(results(maker))).contains(guess));
  }

  @Test
  void aPriceNotKnownIsNotNought() {
    SeasonMaker maker = plenty().carryAtLeast(2).plain("Net").aboard("Net", "", "J1", 1);
    List<String> lines = toDo(results(maker));
    assertEquals("1. Buy 1 piece, price not known; that only fills floors:", lines.get(1));
    assertEquals("1 piece of Net, price not known", lines.get(2).strip());
    lines = toDo(results(maker.budget("5")));
    assertEquals(
        "1. Fill in Pack price, so that the budget can pay for what is to be bought:",
        lines.get(1));
    assertEquals("1 piece of Net, price not known", lines.get(2).strip());
    maker.budget("500").aboard("Jig", "red", "J1", 0);
    lines = toDo(results(maker));
    assertEquals(
        "1. Buy 3 packs for 18.00 USD of your 500.00 USD to take the chance that nothing important runs out from 40 to"
            + " 96 %:",
        lines.get(1));
    assertEquals("1 line only fills a floor and has no price.", lines.get(3).strip());
    assertFalse(String.join("\n", lines).contains("Beyond"), lines.toString());
  }

  @Test
  void namesWhatMattersBeyondTheBudget() {
    SeasonMaker maker = plenty().budget("7").aboard("Jig", "red", "J1", 0).carryAtLeast(3);
    List<String> lines = toDo(results(maker));
    assertEquals(
        "1. Buy 1 pack for 6.00 USD of your 7.00 USD to take the chance that nothing important runs"
            + " out from 40 to 79 %:",
        lines.get(1));
    assertTrue(
        lines.get(3).matches(" +Beyond the budget: \\d packs? of Jig red, \\d+\\.00 USD\\."),
        lines.get(3));
    lines = toDo(results(maker.budget("5")));
    assertEquals("1. Buy list: your 5.00 USD pay for nothing on it.", lines.get(1));
    assertTrue(
        lines.get(2).matches(" +Beyond the budget: \\d packs of Jig red, \\d+\\.00 USD\\."),
        lines.get(2));
  }

  @Test
  void mendingNamesTheFirstErrorsCausesFirst() {
    Finding follows = Finding.of(Code.LEFT_OUT_KEY, STOCK, "J2", "Box", "", "Boxes A3");
    Finding cause = Finding.of(Code.REQUIRED_BLANK, new Cell("Boxes", 3, 2), "Compartment", "");
    Results results = results(plenty(), follows, cause, cause, cause, cause);
    List<Block.Line> lines = toDoLines(results);
    assertEquals(
        "1. Mend 4 of 5 errors in your sheets (rows or values were left out):",
        lines.get(1).text());
    assertEquals(Optional.of(cause.at()), lines.get(2).link());
    assertEquals("     " + Phrase.capital(cause.message()), lines.get(2).text());
    assertEquals(
        "     1 more is a row left out because of these.", lines.get(6).text(), lines.toString());
  }

  @Test
  void keepsTheListToOneScreen() {
    SeasonMaker maker = plenty();
    for (int i = 0; i < 40; i++) {
      maker.aboard("Jig", "c" + i, "J1", 0).ashore("Jig", "c" + i, "Tub", 5);
      maker.aboard("Jig", "d" + i, "J1", 0);
    }
    int lines = toDo(results(maker)).size();
    assertTrue(lines > 8 && lines <= 35, lines + " lines");
  }

  /** Two events of one day: the trip of the one is not that of the other. */
  @Test
  void anEventOfTheSameDayStillWaitsForItsTrip() {
    SeasonMaker maker = plenty();
    maker
        .event("Dawn cup", AS_OF.minusDays(1), 4, 0.5)
        .event("Dusk cup", AS_OF.minusDays(1), 4, 0.5);
    maker.trip("Dawn cup", AS_OF.minusDays(1), 4, "Jig", 4);
    assertTrue(toDo(results(maker)).toString().contains("Log Dusk cup"), toDo(results(maker)) + "");
    assertFalse(toDo(results(maker)).toString().contains("Log Dawn cup"));
    maker.trip("evening", AS_OF.minusDays(1), 4, "Jig", 4);
    assertFalse(toDo(results(maker)).toString().contains("Log D"));
  }
}
