package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;

import java.util.ArrayList;
import java.util.List;
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
import sparewell.season.Cause;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.spares.BuyPlanner;
import sparewell.spares.OffSeasonPlanner;
import sparewell.spares.SeasonPlanner;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.stow.Boats;
import sparewell.stow.StowPlan;
import sparewell.stow.StowPlanner;
import sparewell.table.Block;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/** The front page for small seasons whose answer is plain. */
class AfterTripSheetTest {
  static final Cell STOCK = new Cell("Stock", 7, 5);

  static SeasonMaker plenty() {
    return new SeasonMaker()
        .carryAtLeast(1)
        .priced("Jig", 2, "6.00")
        .aboard("Jig", "black", "J1", 90)
        .trip("t", AS_OF.minusDays(40), 8, "Jig", 4)
        .loss("t", "Jig", "black", 2, Cause.SNAG);
  }

  static Results results(
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
        Typed.NOTHING,
        lastRun);
  }

  static Results results(SeasonMaker maker, Finding... findings) {
    return results(maker, maker.season(), List.of(findings), Optional.empty());
  }

  /** A person of 90 kg in a boat whose plate allows 150 lb. */
  private static Results tooHeavy() {
    SeasonMaker maker = plenty();
    maker.loads = new Boats().load("Angler", FixedLoad.Kind.PERSON, 90, 150, 0).loads;
    maker.boat =
        new Boat(
            Optional.of(Mass.of(150, MassUnit.POUND)),
            Optional.empty(),
            true,
            Optional.empty(),
            Optional.empty());
    return results(
        maker,
        maker.season(),
        List.of(Finding.of(Code.RECOUNT, STOCK, "Jig black", "2")),
        Optional.empty());
  }

  static List<String> toDo(Results results) {
    return toDoLines(results).stream().map(Block.Line::text).toList();
  }

  static List<Block.Line> toDoLines(Results results) {
    return Step.lines(ReportSheets.of(results).toDo(), results);
  }

  /**
   * The chance that the whole list gives is the most that is planned: it is never called poor or
   * middling, and with all that is asked for aboard the word is good.
   */
  @Test
  void aChanceThatNoLineRaisesIsGood() {
    SeasonMaker maker = plenty();
    for (int i = 0; i < 40; i++) {
      maker.aboard("Jig", "c" + i, "J1", 0);
    }
    List<AfterTripSheet.Figure> figures =
        Figures.of(results(maker)).stream().filter(f -> f.name().contains("also bought")).toList();
    assertTrue(figures.get(0).now().matches("\\d+ %, good"), figures.toString());
    assertTrue(Figures.of(results(maker)).get(0).now().endsWith(", poor"));
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
    maker.boxes = new Boats().box("Tray", "Bow", 2).boxes;
    Season season = maker.season();
    Cell bow = season.compartments().get(0).origin();
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
    String text = seasonPlan(maker);
    assertTrue(text.contains("After Cup (" + AS_OF.minusDays(35) + ")\nYou lost 9 pieces"), text);
    assertTrue(text.contains("Unpack Kit: 2 Jig blue to J1."), text);
    assertTrue(text.contains("look over what broke or wore: Jig."), text);
  }

  private static String seasonPlan(SeasonMaker maker) {
    return SeasonPlanSheet.of(results(maker)).blocks().stream()
        .filter(Block.Text.class::isInstance)
        .flatMap(block -> ((Block.Text) block).lines().stream())
        .map(Block.Line::text)
        .collect(java.util.stream.Collectors.joining("\n"));
  }

  /** Seven days from an order until it is aboard, unless set. */
  @Test
  void anOrderThatComesTooLateIsSaidToBeLate() {
    SeasonMaker soon = plenty().aboard("Jig", "red", "J1", 0);
    soon.event("Cup", AS_OF.plusDays(6), 8, 1);
    String late = "An order of today is aboard on " + AS_OF.plusDays(7) + ", too late for Cup";
    assertTrue(seasonPlan(soon).contains(late), seasonPlan(soon));
    SeasonMaker later = plenty().aboard("Jig", "red", "J1", 0);
    later.event("Cup", AS_OF.plusDays(7), 8, 1);
    assertFalse(seasonPlan(later).contains("too late"), seasonPlan(later));
  }

  /** The buy list is for the next event alone; where the season wants more, the plan says so. */
  @Test
  void theSeasonPlanSaysWhatOfTheFirstOrderIsBeyondTheBuyList() {
    StringBuilder all = new StringBuilder();
    for (int held = 0; held < 12; held++) {
      SeasonMaker maker = plenty().aboard("Jig", "blue", "J1", held);
      for (int t = 0; t < 6; t++) {
        maker.trip("t" + t, AS_OF.minusDays(60 - 5L * t), 8, "Jig", 4);
        maker.loss("t" + t, "Jig", "blue", 1, Cause.BROKEN);
      }
      for (int k = 1; k < 5; k++) {
        maker.event("Cup " + k, AS_OF.plusDays(20L * k), 8, 1);
      }
      all.append(seasonPlan(maker)).append('\n');
    }
    assertTrue(all.toString().contains("next event, has all but "), all + "");
    assertTrue(all.toString().contains("next event, has none of it"), all + "");
  }

  /**
   * The first day to order may serve several events: all are named, there and on the front page.
   */
  @Test
  void anOrderOfTodayForEventsAheadIsToldBesideTheSteps() {
    StringBuilder all = new StringBuilder();
    for (int held = 0; held < 9; held++) {
      SeasonMaker maker = plenty().aboard("Jig", "blue", "J1", held);
      for (int t = 0; t < 6; t++) {
        maker.trip("t" + t, AS_OF.minusDays(60 - 5L * t), 8, "Jig", 4);
        maker.loss("t" + t, "Jig", "blue", 1, Cause.BROKEN);
      }
      for (int k = 1; k < 4; k++) {
        maker.event("Cup " + k, AS_OF.plusDays(2L * k), 8, 1);
      }
      all.append(toDo(results(maker))).append(seasonPlan(maker)).append('\n');
    }
    String front = "can stay where it is., Season plan has an order for events ahead: today, ";
    assertTrue(all.toString().contains(front + "1 pack, 6.00 USD, for Cup 2."), all + "");
    String beside = "Jig blue, 6.00 USD, Season plan has an order for events ahead: today, ";
    String order = "2 packs, 12.00 USD, for Cup 1 and Cup 2; Buy list, which looks no further";
    assertTrue(all.toString().contains(beside + order), all + "");
    assertTrue(all.toString().contains("Order today: " + order), all + "");
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
  void whereNothingHasAnImportanceOfOneTheRestIsCounted() {
    SeasonMaker maker = new SeasonMaker().style("Jig").importance(0.5);
    maker.aboard("Jig", "black", "J1", 9).trip("t", AS_OF.minusDays(40), 8, "Jig", 4);
    AfterTripSheet.Figure chance =
        Figures.of(results(maker)).stream()
            .filter(figure -> figure.name().equals(Figures.CHANCE_NOW))
            .findFirst()
            .orElseThrow();
    assertEquals(
        "Of 1 item in use with an importance above 0; each lasts with the chance you want.",
        chance.meaning());
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
