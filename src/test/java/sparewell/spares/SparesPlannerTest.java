package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SeasonMaker.AS_OF;
import static sparewell.spares.SeasonMaker.line;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.season.Place;
import sparewell.spares.SparesRow.Reason;

class SparesPlannerTest {
  private static SparesReport plan(SeasonMaker maker, KnownForecast forecast) {
    return SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
  }

  /** One Jig, mean loss 2.4 over 24 h. qpois(c(.8, .9, .95, .99), 2.4) = 4 4 5 7, R 4.2.2. */
  private static int carry(SeasonMaker maker) {
    return plan(maker.aboard("Jig", "", "J1", 0), new KnownForecast().poisson("Jig", 0.1))
        .rows()
        .get(0)
        .carry();
  }

  @Test
  void chanceWantedIsTheCommandLinesThenTheStylesThenTheEventsThenTheSettings() {
    assertEquals(5, carry(new SeasonMaker().style("Jig").add()));
    assertEquals(4, carry(new SeasonMaker().chance(0.8, false).style("Jig").add()));
    assertEquals(
        7,
        carry(new SeasonMaker().style("Jig").add().event("Cup", AS_OF, 24, 1).eventChance(0.99)));
    assertEquals(
        4,
        carry(
            new SeasonMaker()
                .style("Jig")
                .wanted(0.8)
                .add()
                .event("Cup", AS_OF, 24, 1)
                .eventChance(0.99)));
    assertEquals(
        7,
        carry(
            new SeasonMaker()
                .chance(0.99, true)
                .style("Jig")
                .wanted(0.8)
                .add()
                .event("Cup", AS_OF, 24, 1)
                .eventChance(0.9)));
  }

  @Test
  void eventsPlannedTogetherTakeTheHighestChanceAnyOfThemAsksFor() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .add()
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
            .add()
            .style("Worm")
            .add()
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
            .add()
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
  void neededAtOnceUsesWhatIsAboardBeforeAnythingIsBrought() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Net")
            .atOnce(2, 1)
            .add()
            .ashore("Net", "old", "Rack", 5)
            .aboard("Net", "new", "Locker", 2);
    SparesReport report = plan(maker, new KnownForecast());
    assertEquals(List.of(0, 2), report.rows().stream().map(SparesRow::floor).toList());
    assertTrue(report.brings().isEmpty());
  }

  @Test
  void reasonNamesWhatBinds() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(3)
            .style("Jig")
            .add()
            .style("Worm")
            .add()
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
  void bringsFromAshoreFirstAndBuysTheRestInWholePacks() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .pack(4, "5.50")
            .floor(12)
            .add()
            .style("Worm")
            .add()
            .aboard("Jig", "black", "J1", 1)
            .aboard("Jig", "black", "J2", 2)
            .ashore("Jig", "black", "Tub", 1)
            .ashore("Jig", "black", "Shelf", 3)
            .ashore("Worm", "", "Tub", 4);
    SparesReport report = plan(maker, new KnownForecast().poisson("Worm", 0.05));
    SparesRow jig = report.rows().get(0);
    assertEquals(4, jig.bringAboard());
    assertEquals(2, jig.buyPacks(), "12 wanted, 7 after bringing, 4 in a pack");
    assertEquals(8, jig.buyPieces());
    assertEquals(Optional.of(new BigDecimal("11.00")), jig.cost());
    List<Bring> brings = report.brings();
    assertEquals("Worm", brings.get(0).item().style(), "saves most");
    assertEquals(Optional.of(new Place("J2", "Bow")), brings.get(0).to(), "to its family");
    assertFalse(brings.get(0).open());
    assertEquals(new Place("Shelf", "Garage"), brings.get(1).from());
    assertEquals(Optional.of(new Place("J2", "Bow")), brings.get(1).to());
    assertEquals(List.of(3, 1), brings.subList(1, 3).stream().map(Bring::pieces).toList());
  }

  @Test
  void everyItemInStockHasARowAlsoWithoutPieces() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .add()
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
    SeasonMaker maker = new SeasonMaker().style("Net").atOnce(1, 1).add();
    assertEquals(
        Code.NEEDED_BUT_NOT_IN_STOCK, plan(maker, new KnownForecast()).findings().get(0).code());
  }

  @Test
  void outlookIsTheChanceThatNoImportantItemRunsOut() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .add()
            .style("Toy")
            .importance(0.5)
            .add()
            .style("Worm")
            .importance(2)
            .add()
            .aboard("Jig", "", "J1", 2)
            .ashore("Jig", "", "Tub", 1)
            .aboard("Toy", "", "T1", 0)
            .aboard("Worm", "", "W1", 4);
    KnownForecast forecast =
        new KnownForecast().poisson("Jig", 1.2 / 24).poisson("Toy", 1).poisson("Worm", 2.0 / 24);
    Outlook outlook = plan(maker, forecast).outlook();
    assertEquals(2, outlook.watchedItems());
    // R 4.2.2: ppois(2, 1.2) = 0.879487098904, ppois(3, 1.2) = 0.966231031778,
    // ppois(4, 2) = 0.947346982656
    double jig2 = 0.879487098904;
    double jig3 = 0.966231031778;
    double worm4 = 0.947346982656;
    assertEquals(jig2 * worm4, outlook.nowProbability().getAsDouble(), 1e-9);
    assertEquals(jig3 * worm4, outlook.afterBringingProbability().getAsDouble(), 1e-9);
    assertEquals("Jig", outlook.holdingDown().get(0).item().style());
    assertEquals(1 - jig2, outlook.holdingDown().get(0).runOutProbability(), 1e-9);
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
            .atOnce(random.nextInt(8), 1 + random.nextDouble())
            .add();
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
  void bringsGoToTheItemsPlaceElseToItsStylesAndTakeNoMoreThanNeeded() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(3)
            .style("Worm")
            .add()
            .style("Jig")
            .add()
            .aboard("Worm", "", "W1", 9)
            .aboard("Jig", "blue", "J1", 4)
            .aboard("Jig", "green", "J2", 5)
            .aboard("Jig", "brown", "J3", 5)
            .aboard("Jig", "black", "J4", 1)
            .ashore("Jig", "black", "Shelf", 2)
            .ashore("Jig", "black", "Tub", 2)
            .ashore("Jig", "red", "Tub", 4);
    List<Bring> brings = plan(maker, new KnownForecast()).brings();
    assertEquals(
        List.of("black 2 Shelf J4", "red 3 Tub J2"),
        brings.stream()
            .map(
                bring ->
                    bring.item().colour()
                        + " "
                        + bring.pieces()
                        + " "
                        + bring.from().box()
                        + " "
                        + bring.to().orElseThrow().box())
            .toList());
  }

  /** R 4.2.2: loss table of Poisson(2), stock 1 and 3; ppois(4, 2, lower.tail = FALSE). */
  @Test
  void bringingSavesTheWeightedFallOfShortage() {
    SeasonMaker maker =
        new SeasonMaker()
            .chance(0.85, false)
            .style("Jig")
            .importance(2)
            .add()
            .aboard("Jig", "", "J1", 1)
            .ashore("Jig", "", "Tub", 2);
    SparesReport report = plan(maker, new KnownForecast().poisson("Jig", 2.0 / 24));
    SparesRow row = report.rows().get(0);
    assertEquals(3, row.carry(), "ppois(3, 2) = 0.857");
    assertEquals(2 * (1.13533528 - 0.21801755), row.shortageSavedByBringing(), 1e-7);
    assertEquals(row.shortageSavedByBringing(), report.brings().get(0).shortageSavedPieces());
    // ppois(3, 2, lower.tail = FALSE), R 4.2.2
    assertEquals(0.1428765395, row.runOutAtCarryProbability(), 1e-9);
    assertEquals("loss rate", row.reason().words());
  }

  @Test
  void neededAtOnceGoesFirstWhereItCostsNothing() {
    // Two needed; the first item has none, the second one aboard, the third one ashore.
    SeasonMaker maker =
        new SeasonMaker()
            .style("Net")
            .atOnce(2, 1)
            .add()
            .aboard("Net", "none", "L", 0)
            .ashore("Net", "home", "Rack", 1)
            .aboard("Net", "here", "L", 1);
    assertEquals(List.of(0, 1, 1), floors(maker));
    SeasonMaker bare =
        new SeasonMaker()
            .style("Net")
            .atOnce(3, 1)
            .add()
            .aboard("Net", "a", "L", 0)
            .aboard("Net", "b", "L", 0);
    assertEquals(List.of(2, 1), floors(bare), "of equals the first");
    SeasonMaker both =
        new SeasonMaker()
            .style("Net")
            .atOnce(2, 1)
            .add()
            .aboard("Net", "a", "L", 0)
            .aboard("Net", "b", "L", 1)
            .ashore("Net", "b", "Rack", 1);
    assertEquals(List.of(0, 2), floors(both), "what is aboard and ashore counts together");
  }

  private static List<Integer> floors(SeasonMaker maker) {
    return plan(maker, new KnownForecast()).rows().stream().map(SparesRow::floor).toList();
  }

  @Test
  void aStyleWithoutStockThatIsNotNeededIsNoFinding() {
    SeasonMaker maker = new SeasonMaker().style("Net").add();
    assertTrue(plan(maker, new KnownForecast()).findings().isEmpty());
  }

  /** Mean losses 1.2 at either event: qpois(0.95, 1.2) = 3; 2.4 together: 5. R 4.2.2. */
  @Test
  void eachEventHasItsOwnNeeds() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(9)
            .style("Jig")
            .add()
            .style("Frog")
            .add()
            .style("Worm")
            .add()
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
            .style("Jig")
            .add()
            .aboard("Jig", "", "J", 1)
            .event("A", AS_OF, 8, 1, line("Jig", 12));
    assertEquals(List.of("Jig 1.2 true 3"), needs(plan(one, forecast).eventNeeds().get(0)));
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

  private static Outlook outlook(double jig, double toy, int jigs) {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .importance(jig)
            .add()
            .style("Toy")
            .importance(toy)
            .add()
            .aboard("Jig", "", "J1", jigs)
            .aboard("Toy", "", "T1", 400);
    return plan(maker, new KnownForecast().poisson("Jig", 2.0 / 24).poisson("Toy", 0.01 / 24))
        .outlook();
  }

  @Test
  void importantIsOneAndMoreElseAnythingAboveNothing() {
    assertEquals(1, outlook(1, 0.9, 2).watchedItems());
    assertEquals(2, outlook(1, 1, 2).watchedItems());
    assertEquals(2, outlook(0.9, 0.1, 2).watchedItems());
    assertEquals(1, outlook(0.9, 0, 2).watchedItems());
    Outlook none = outlook(0, 0, 2);
    assertEquals(0, none.watchedItems());
    assertTrue(none.nowProbability().isEmpty());
    assertTrue(none.holdingDown().isEmpty());
  }

  /** ppois(c(2, 5), 2) = 0.6766764, 0.9834364; R 4.2.2: five are wanted for 0.95. */
  @Test
  void outlookAfterBuyingCountsWhatIsBought() {
    Outlook outlook = outlook(1, 1, 2);
    assertEquals(0.6766764, outlook.nowProbability().getAsDouble(), 1e-7);
    assertEquals(0.6766764, outlook.afterBringingProbability().getAsDouble(), 1e-7);
    assertEquals(0.9834364, outlook.afterBuyingProbability().getAsDouble(), 1e-7);
    assertEquals(
        List.of("Jig"), outlook.holdingDown().stream().map(weak -> weak.item().style()).toList());
  }
}
