package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.season.SeasonMaker;
import sparewell.spares.SparesRow.Reason;

class SparesPlannerTest {
  static SparesReport plan(SeasonMaker maker, KnownForecast forecast) {
    return SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
  }

  /** One Jig, mean loss 2.4 over 24 h. qpois(c(.8, .9, .95, .99), 2.4) = 4 4 5 7, R 4.2.2. */
  static int carry(SeasonMaker maker) {
    return plan(maker.aboard("Jig", "", "J1", 0), new KnownForecast().poisson("Jig", 0.1))
        .rows()
        .get(0)
        .carry();
  }

  @Test
  void chanceWantedIsTheCommandLinesThenTheStylesThenTheEventsThenTheSettings() {
    assertEquals(5, carry(new SeasonMaker().plain("Jig")));
    assertEquals(4, carry(new SeasonMaker().chance(0.8, false).plain("Jig")));
    assertEquals(
        7, carry(new SeasonMaker().plain("Jig").event("Cup", AS_OF, 24, 1).eventChance(0.99)));
    assertEquals(
        4,
        carry(
            new SeasonMaker()
                .style("Jig")
                .wanted(0.8)
                .event("Cup", AS_OF, 24, 1)
                .eventChance(0.99)));
    assertEquals(
        7,
        carry(
            new SeasonMaker()
                .chance(0.99, true)
                .style("Jig")
                .wanted(0.8)
                .event("Cup", AS_OF, 24, 1)
                .eventChance(0.9)));
  }

  @Test
  void eventsPlannedTogetherTakeTheHighestChanceAnyOfThemAsksFor() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .event("A", AS_OF, 12, 1)
            .eventChance(0.8)
            .event("B", AS_OF.plusDays(1), 12, 1)
            .eventChance(0.99);
    assertEquals(7, carry(maker));
  }

  @Test
  void floorIsTheItemsThenTheStylesThenTheSettings() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(3)
            .style("Jig")
            .floor(2)
            .plain("Worm")
            .aboard("Jig", "black", "J1", 0)
            .aboard("Jig", "blue", "J1", 0)
            .aboard("Worm", "", "W1", 0)
            .itemFloor("Jig", "black", 0);
    List<SparesRow> rows = plan(maker, new KnownForecast()).rows();
    assertEquals(List.of(0, 2, 3), rows.stream().map(SparesRow::floor).toList());
    assertEquals(List.of(0, 2, 3), rows.stream().map(SparesRow::carry).toList());
    assertTrue(rows.stream().allMatch(row -> row.reason() == Reason.FLOOR));
    assertEquals(0, rows.get(1).runOutNowProbability());
  }

  @Test
  void neededAtOnceIsMetByTheItemsOfTheStyleTogether() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(1)
            .style("Rod")
            .atOnce(4, 1.5)
            .aboard("Rod", "medium", "Locker", 2)
            .aboard("Rod", "heavy", "Locker", 1)
            .ashore("Rod", "heavy", "Rack", 1);
    List<SparesRow> rows = plan(maker, new KnownForecast()).rows();
    assertEquals(6, rows.stream().mapToInt(SparesRow::floor).sum(), "ceil(4 x 1.5)");
    assertEquals(List.of(3, 3), rows.stream().map(SparesRow::floor).toList());
    assertEquals(Reason.NEEDED_AT_ONCE, rows.get(0).reason());
    assertEquals(1, rows.get(1).bringAboard());
    assertEquals(List.of(1, 1), rows.stream().map(SparesRow::buyPacks).toList());
  }

  @Test
  void reasonNamesWhatBinds() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(3)
            .plain("Jig", "Worm")
            .aboard("Jig", "", "J1", 1)
            .aboard("Worm", "", "W1", 1);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 0.5).poisson("Worm", 0.001);
    assertEquals(
        List.of(Reason.LOSS_RATE, Reason.FLOOR),
        plan(maker, forecast).rows().stream().map(SparesRow::reason).toList());
    maker.event("Cup", AS_OF, 8, 1, line("Jig", 20));
    List<SparesRow> rows = plan(maker, forecast).rows();
    assertEquals(Reason.EVENT_PLAN, rows.get(0).reason());
    assertEquals(0, rows.get(1).planningHours());
    assertEquals(3, rows.get(1).carry(), "a style the plan leaves out keeps its floor");
  }

  @Test
  void everyItemInStockHasARowAlsoWithoutPieces() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .aboard("Jig", "black", "J1", 0)
            .ashore("Jig", "blue", "Tub", 0);
    List<SparesRow> rows = plan(maker, new KnownForecast().poisson("Jig", 0.1)).rows();
    assertEquals(2, rows.size());
    assertEquals(1.2, rows.get(0).expectedLossPieces(), 1e-12);
    // ppois(0, 1.2, lower.tail = FALSE), R 4.2.2
    assertEquals(0.6988057880877978, rows.get(1).runOutNowProbability(), 1e-12);
    assertEquals(Optional.empty(), rows.get(0).cost(), "no price");
  }

  @Test
  void asksForStockOfWhatIsNeededAtOnce() {
    SeasonMaker maker = new SeasonMaker().style("Net").atOnce(1, 1);
    assertEquals(
        Code.NEEDED_BUT_NOT_IN_STOCK, plan(maker, new KnownForecast()).findings().get(0).code());
  }

  @Test
  void aWiderChanceNeverLowersCarryAndBoughtPlusBroughtCoverWhatIsShort() {
    Random random = new Random(7);
    for (int round = 0; round < 60; round++) {
      SeasonMaker maker = new SeasonMaker().carryAtLeast(random.nextInt(4));
      KnownForecast forecast = new KnownForecast();
      for (int s = 0; s < 4; s++) {
        String style = "S" + s;
        maker
            .style(style)
            .pack(1 + random.nextInt(6), "3.20")
            .atOnce(random.nextInt(8), 1 + random.nextDouble());
        forecast.negBin(style, random.nextDouble() * 0.3, 0.5 + random.nextDouble());
        for (int c = 0; c < 3; c++) {
          maker
              .aboard(style, "c" + c, "B", random.nextInt(5))
              .ashore(style, "c" + c, "T", random.nextInt(5));
        }
      }
      List<SparesRow> before = null;
      for (double chance : new double[] {0.5, 0.8, 0.95, 0.99}) {
        SparesReport report = plan(maker.chance(chance, false), forecast);
        List<SparesRow> rows = report.rows();
        for (int i = 0; i < rows.size(); i++) {
          SparesRow row = rows.get(i);
          int have = row.aboard() + row.bringAboard() + row.buyPieces();
          assertTrue(row.bringAboard() <= row.ashore());
          assertTrue(have >= row.carry());
          assertTrue(row.buyPacks() == 0 || have - row.piecesPerPack() < row.carry());
          assertTrue(row.carry() >= row.floor());
          if (row.carry() > row.floor()) {
            assertTrue(row.runOutAtCarryProbability() <= 1 - chance + 1e-9);
            assertTrue(row.losses().above(row.carry() - 1) > 1 - chance - 1e-9);
          }
        }
        for (int s = 0; s < 4; s++) {
          String style = "S" + s;
          int together = maker.season().stylesByName().get(style).neededTogether();
          assertTrue(
              rows.stream()
                      .filter(row -> row.item().style().equals(style))
                      .mapToInt(SparesRow::floor)
                      .sum()
                  >= together);
        }
        assertEquals(
            rows.stream().mapToInt(SparesRow::bringAboard).sum(),
            report.brings().stream().mapToInt(Bring::pieces).sum());
        if (before != null) {
          for (int i = 0; i < rows.size(); i++) {
            assertTrue(rows.get(i).carry() >= before.get(i).carry());
          }
        }
        before = rows;
      }
    }
  }

  @Test
  void aStyleWithoutStockThatIsNotNeededIsNoFinding() {
    SeasonMaker maker = new SeasonMaker().plain("Net");
    assertTrue(plan(maker, new KnownForecast()).findings().isEmpty());
  }

  /** Mean losses 1.2 at either event: qpois(0.95, 1.2) = 3; 2.4 together: 5. R 4.2.2. */
  @Test
  void eachEventHasItsOwnNeeds() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(9)
            .plain("Jig", "Frog", "Worm")
            .aboard("Jig", "", "J", 1)
            .aboard("Frog", "", "F", 1)
            .aboard("Worm", "", "W", 1)
            .event("A", AS_OF, 8, 1, line("Jig", 12), line("Frog", 2))
            .event("B", AS_OF.plusDays(1), 12, 1);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 0.1).poisson("Frog", 0.001);
    forecast.share("Frog", 0.5);
    SparesReport report = plan(maker, forecast);
    assertEquals(2.4, report.rows().get(0).expectedLossPieces(), 1e-12);
    assertEquals(
        List.of("A", "B"), report.eventNeeds().stream().map(n -> n.event().name()).toList());
    assertEquals(List.of("Jig 1.2 true 3", "Frog 0.002 true 1"), needs(report.eventNeeds().get(0)));
    assertEquals(
        List.of("Jig 1.2 false 3", "Frog 0.006 false 0"), needs(report.eventNeeds().get(1)));
    SeasonMaker one =
        new SeasonMaker()
            .plain("Jig", "Frog")
            .aboard("Jig", "", "J", 1)
            .ashore("Frog", "", "T", 1)
            .event("A", AS_OF, 8, 1, line("Jig", 12), line("Frog", 2));
    assertEquals(
        List.of("Jig 1.2 true 3", "Frog 0.002 true 1"),
        needs(plan(one, forecast).eventNeeds().get(0)));
  }

  private static List<String> needs(EventNeed need) {
    return need.items().stream()
        .map(
            item ->
                String.format(
                    Locale.ROOT,
                    "%s %.3f %s %d",
                    item.item().style(),
                    item.losses().mean(),
                    item.inPlan(),
                    item.wanted()))
        .map(words -> words.replace("1.200", "1.2"))
        .toList();
  }
}
