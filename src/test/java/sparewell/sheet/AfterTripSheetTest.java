package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SeasonMaker.AS_OF;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacker;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.load.LoadReport;
import sparewell.load.LoadSheet;
import sparewell.rates.LossModel;
import sparewell.rates.record.TrackRecord;
import sparewell.season.Boat;
import sparewell.season.Box;
import sparewell.season.Cause;
import sparewell.season.Compartment;
import sparewell.season.FixedLoad;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.SeasonSketch;
import sparewell.spares.BuyPlanner;
import sparewell.spares.OffSeasonPlanner;
import sparewell.spares.SeasonMaker;
import sparewell.spares.SeasonPlanner;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.stow.StowPlan;
import sparewell.stow.StowPlanner;
import sparewell.table.Block;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/** What the front page says, for small seasons whose answer is plain. */
class AfterTripSheetTest {
  private static final Cell STOCK = new Cell("Stock", 7, 5);

  private static SeasonMaker plenty() {
    return new SeasonMaker()
        .carryAtLeast(1)
        .style("Jig")
        .pack(2, "6.00")
        .add()
        .aboard("Jig", "black", "J1", 90)
        .trip("t", AS_OF.minusDays(40), 8, "Jig", 4)
        .loss("t", "Jig", "black", 2, Cause.SNAG);
  }

  private static Results results(
      SeasonMaker maker, Season season, List<Finding> more, Optional<LastRun> lastRun) {
    LossModel rates = LossModel.fit(season);
    SparesReport spares = SparesPlanner.plan(season, maker.onHand(), rates);
    StowPlan stow = StowPlanner.plan(season, maker.onHand());
    LoadReport load = LoadSheet.of(season, maker.onHand(), stow);
    List<Finding> findings = new ArrayList<>(more);
    findings.addAll(load.findings());
    return new Results(
        "0",
        season,
        findings,
        maker.onHand(),
        rates,
        TrackRecord.of(season),
        spares,
        BuyPlanner.plan(season, spares, rates),
        SeasonPlanner.plan(season, maker.onHand(), rates, spares.rows()),
        OffSeasonPlanner.plan(season, maker.onHand(), rates),
        EventPacker.pack(season, maker.onHand(), spares.eventNeeds()),
        stow,
        load,
        Entered.NOTHING,
        lastRun);
  }

  private static Results results(SeasonMaker maker, Finding... findings) {
    return results(maker, maker.season(), List.of(findings), Optional.empty());
  }

  /** A person of 200 lb in a boat whose plate allows 150 lb. */
  private static Results tooHeavy() {
    SeasonMaker maker = plenty();
    Season season = maker.season();
    Length middle = Length.of(60, LengthUnit.INCH);
    FixedLoad person =
        new FixedLoad(
            "Angler",
            Mass.of(200, MassUnit.POUND),
            middle,
            Length.of(0, LengthUnit.INCH),
            FixedLoad.Kind.PERSON,
            Cell.NOWHERE);
    Boat boat =
        new Boat(
            Optional.of(Mass.of(150, MassUnit.POUND)),
            Optional.empty(),
            true,
            Optional.empty(),
            Optional.empty());
    SeasonSketch crewed = SeasonSketch.of(season);
    crewed.loads = List.of(person);
    crewed.boat = boat;
    return results(
        maker,
        crewed.season(),
        List.of(Finding.of(Code.RECOUNT, STOCK, "Jig black", "2")),
        Optional.empty());
  }

  private static List<String> toDo(Results results) {
    return toDoLines(results).stream().map(Block.Line::text).toList();
  }

  private static List<Block.Line> toDoLines(Results results) {
    return StepLines.of(ReportSheets.of(results).toDo());
  }

  private static List<String> front(Results results) {
    List<String> lines = new ArrayList<>();
    for (Block block : ReportSheets.of(results).sheets().get(0).blocks()) {
      if (block instanceof Block.Text text) {
        text.lines().forEach(line -> lines.add(line.text()));
      }
    }
    return lines;
  }

  @Test
  void saysThatThereIsNothingToDo() {
    List<String> lines = toDo(results(plenty()));
    assertEquals(2, lines.size(), lines.toString());
    assertTrue(lines.get(1).startsWith("Nothing to do"), lines.get(1));
  }

  /** What the whole list does is the most that is planned: it is never called poor or middling. */
  @Test
  void aChanceThatNoLineRaisesIsNotJudged() {
    SeasonMaker maker = plenty();
    for (int i = 0; i < 40; i++) {
      maker.aboard("Jig", "c" + i, "J1", 0);
    }
    List<AfterTripSheet.Figure> figures =
        Figures.of(results(maker)).stream().filter(f -> f.name().contains("also bought")).toList();
    assertTrue(figures.get(0).now().matches("[1-9]\\d %|\\d+ %, good"), figures.toString());
    assertTrue(Figures.of(results(maker)).get(0).now().endsWith(", poor"));
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
  void putsTooMuchWeightOnTopOfAllElse() {
    List<String> lines = toDo(tooHeavy());
    assertTrue(lines.get(1).matches("1\\. The load is .*OVER the capacity plate.*"), lines.get(1));
    assertTrue(lines.get(1).contains("ake weight out"), lines.get(1));
    assertTrue(
        lines.get(2).startsWith("2. Recount 1 item: type what you find under Counted"),
        lines.toString());
  }

  @Test
  void aCentreFromADoubtfulPositionIsNotToBeTrusted() {
    SeasonMaker maker = plenty();
    Cell bow = new Cell("Compartments", 3, 1);
    Season season = standingAt(maker.season(), bow);
    Finding doubt =
        Finding.of(Code.POSITION_DOUBTFUL, bow, "Bow", "17800.0 in", "forward", "315.0 in");
    assertEquals(
        "Smaller is further aft.",
        centre(results(maker, season, List.of(), Optional.empty())).meaning());
    AfterTripSheet.Figure doubtful =
        centre(results(maker, season, List.of(doubt), Optional.empty()));
    assertEquals(
        "Do not trust it: mend the position at Compartments A3 first.", doubtful.meaning());
    assertEquals(Tone.BAD, doubtful.tone());
  }

  /** The same season with a box of some weight in compartments that have a row. */
  private static Season standingAt(Season season, Cell origin) {
    SeasonSketch sketch = SeasonSketch.of(season);
    sketch.boxes = List.of(heavyBox());
    sketch.compartments = season.compartments().stream().map(one -> at(one, origin)).toList();
    return sketch.season();
  }

  private static Box heavyBox() {
    return new Box(
        "Tray",
        "Bow",
        Optional.empty(),
        Optional.of(Mass.of(5, MassUnit.POUND)),
        "",
        false,
        false,
        Optional.empty(),
        OptionalInt.empty(),
        Cell.NOWHERE);
  }

  private static Compartment at(Compartment one, Cell origin) {
    return new Compartment(
        one.name(),
        one.fromTransom(),
        one.fromCentreline(),
        one.size(),
        one.maxLoad(),
        one.atHand(),
        one.ashore(),
        origin,
        origin);
  }

  private static AfterTripSheet.Figure centre(Results results) {
    return Figures.of(results).stream()
        .filter(figure -> figure.name().equals("Tackle centre from the transom"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void afterAnEventTheSeasonPlanTellsHowItWentAndWhatToPutBack() {
    SeasonMaker maker = plenty().aboard("Jig", "blue", "Kit", 2).aboard("Jig", "blue", "J1", 9);
    for (int t = 0; t < 6; t++) {
      maker.trip("t" + t, AS_OF.minusDays(60 - 5L * t), 8, "Jig", 4);
      maker.loss("t" + t, "Jig", "blue", t == 5 ? 9 : 1, Cause.BROKEN);
    }
    maker.boxedEvent("Cup", AS_OF.minusDays(35), 8, 1, "Kit", OptionalInt.of(6));
    ReportSheet plan = SeasonPlanSheet.of(results(maker));
    String text =
        plan.blocks().stream()
            .filter(Block.Text.class::isInstance)
            .flatMap(block -> ((Block.Text) block).lines().stream())
            .map(Block.Line::text)
            .collect(java.util.stream.Collectors.joining("\n"));
    assertTrue(text.contains("After Cup (" + AS_OF.minusDays(35) + ")\nYou lost 9 pieces"), text);
    assertTrue(text.contains("Unpack Kit: 2 Jig blue to J1."), text);
    assertTrue(text.contains("look over what broke or wore: Jig."), text);
  }

  @Test
  void theSeasonPlanShowsWhatMayRunOutAndItsFileHoldsAll() {
    SeasonMaker maker = plenty().aboard("Jig", "blue", "J1", 900).aboard("Jig", "red", "J1", 1);
    for (int t = 0; t < 6; t++) {
      maker.trip("t" + t, AS_OF.minusDays(60 - 5L * t), 8, "Jig", 4);
      maker.loss("t" + t, "Jig", "blue", 1, Cause.BROKEN);
    }
    maker.boxedEvent("Cup", AS_OF.plusDays(35), 8, 1, "Kit", OptionalInt.of(6));
    List<Block> blocks = SeasonPlanSheet.of(results(maker)).blocks();
    Table<?> shown = ((Block.Rows) blocks.get(blocks.size() - 2)).table();
    Table<?> all = ((Block.FileOnly) blocks.get(blocks.size() - 1)).table();
    assertEquals("season-plan.csv", all.csvFile());
    assertTrue(all.rows().containsAll(shown.rows()));
    assertTrue(shown.rows().size() < all.rows().size(), shown.title());
    assertTrue(shown.rows().size() > 0, shown.title());
  }

  @Test
  void leadsToTheRowOfEachThing() {
    SeasonMaker maker =
        plenty()
            .aboard("Jig", "blue", "J1", 0)
            .ashore("Jig", "blue", "Tub", 5)
            .aboard("Jig", "red", "J1", 0);
    SeasonSketch checked = SeasonSketch.of(maker.season());
    checked.boxes = List.of(dueBox("Crank; deep"));
    Results results = results(maker, checked.season(), List.of(), Optional.empty());
    List<ReportSheet> sheets = ReportSheets.of(results).sheets();
    List<Block.Line> lines = ((Block.Text) sheets.get(0).blocks().get(0)).lines();
    Block.Line bring = line(lines, " Jig blue, from Tub to J1");
    assertEquals(cell(sheets, "Spares", 1, 0), bring.link());
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

  private static Block.Line line(List<Block.Line> lines, String words) {
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
    SeasonMaker maker = plenty().carryAtLeast(2).style("Net").add().aboard("Net", "", "J1", 1);
    Finding blank = Finding.of(Code.NO_TRIPS_TO_FIT, Cell.ofSheet("Trips"));
    String guess = "No trip is logged yet, so this rests on a guess";
    assertTrue(String.join("\n", toDo(results(maker, blank))).contains(guess));
    assertFalse(String.join("\n", toDo(results(maker))).contains(guess));
  }

  @Test
  void aPriceNotKnownIsNotNought() {
    SeasonMaker maker = plenty().carryAtLeast(2).style("Net").add().aboard("Net", "", "J1", 1);
    List<String> lines = toDo(results(maker));
    assertEquals("1. Buy 1 piece, price not known; that only fills floors:", lines.get(1));
    assertEquals("1 piece of Net, price not known", lines.get(2).strip());
    maker.aboard("Jig", "red", "J1", 0);
    lines = toDo(results(maker));
    assertEquals(
        "1. Buy 3 packs for 18.00 USD to take the chance that nothing important runs out from 40 to"
            + " 96 %:",
        lines.get(1));
    assertEquals("1 more line only fills a floor.", lines.get(3).strip());
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
    assertEquals("1. Buy list: 5.00 USD pays for nothing on it.", lines.get(1));
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

  @Test
  void saysWhatChangedSinceTheLastRun() {
    ItemId black = new ItemId("Jig", "", "black");
    LastRun before =
        new LastRun(
            Map.of(Figures.DATE, "2026-04-20", "Trips in the log", "0"),
            Map.of(black, 77),
            Map.of(black, 0.9),
            Map.of("Jig", 0));
    SeasonMaker maker = plenty();
    List<String> lines = front(results(maker, maker.season(), List.of(), Optional.of(before)));
    assertTrue(lines.contains("What changed since the last run (as of 2026-04-20)"));
    assertTrue(lines.contains("Trips in the log: now 1, was 0."), lines.toString());
    assertTrue(
        lines.stream().anyMatch(line -> line.matches("Carry \\d+ Jig black, was 77\\.")),
        lines.toString());
    assertTrue(lines.contains("Losses logged since: 2 Jig."), lines.toString());
    assertTrue(lines.contains("Short no more: Jig black."), lines.toString());
    assertTrue(front(results(maker)).contains("This is the first run on this workbook."));
  }

  @Test
  void aChanceThatRisesAfterLossesIsExplained() {
    ItemId black = new ItemId("Jig", "", "black");
    SeasonMaker maker = plenty();
    LastRun before =
        new LastRun(
            Map.of(Figures.DATE, "2026-04-20", Figures.CHANCE_NOW, "31 %, poor"),
            Map.of(),
            Map.of(black, 0.9),
            Map.of("Jig", 1));
    List<String> lines = front(results(maker, maker.season(), List.of(), Optional.of(before)));
    assertTrue(
        lines.stream()
            .anyMatch(
                line ->
                    line.endsWith(
                        "was 31 %, poor, although pieces were lost: the loss rates fell by more than"
                            + " the stock.")),
        lines.toString());
  }

  @Test
  void whereNothingHasAnImportanceOfOneTheRestIsCounted() {
    SeasonMaker maker = new SeasonMaker().style("Jig").importance(0.5).add();
    maker.aboard("Jig", "black", "J1", 9).trip("t", AS_OF.minusDays(40), 8, "Jig", 4);
    AfterTripSheet.Figure chance =
        Figures.of(results(maker)).stream()
            .filter(figure -> figure.name().equals(Figures.CHANCE_NOW))
            .findFirst()
            .orElseThrow();
    assertEquals("Of 1 item in use with an importance above 0.", chance.meaning());
  }

  @Test
  void saysNotCheckedWithoutAPlate() {
    List<AfterTripSheet.Figure> figures = Figures.of(results(plenty()));
    assertTrue(
        figures.stream()
            .anyMatch(f -> f.name().contains("capacity plate") && f.now().equals("not checked")));
    List<AfterTripSheet.Figure> heavy = Figures.of(tooHeavy());
    assertTrue(
        heavy.stream()
            .anyMatch(f -> f.name().contains("capacity plate") && f.now().startsWith("OVER by ")));
    assertFalse(heavy.stream().anyMatch(f -> f.now().equals("OK")));
  }
}
