package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

class BuyPlannerTest {
  static BuyList list(SeasonMaker maker, KnownForecast forecast) {
    SparesReport spares = SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
    return BuyPlanner.plan(maker.season(), spares, forecast);
  }

  static List<String> order(BuyList list) {
    return list.lines().stream().map(line -> line.packs() + " " + line.item().style()).toList();
  }

  /**
   * Marginal analysis by hand: next piece saves P(loss > held); ppois(0:4, 2, lower.tail = FALSE) =
   * 0.865 0.594 0.323 0.143 0.053 and ppois(0:2, 0.8, lower.tail = FALSE) = 0.551 0.191 0.047, R
   * 4.2.2. At 2.00 a Jig and 1.00 a Worm the order is Worm .551, Jig .432, Jig .297, Worm .191, Jig
   * .162, Jig .072 (4 of each cover 0.95 of the Jig, 2 of the Worm).
   */
  @Test
  void ordersByShortageSavedForTheMoney() {
    SeasonMaker maker =
        new SeasonMaker()
            .priced("Jig", 1, "2.00")
            .priced("Worm", 1, "1.00")
            .aboard("Jig", "", "B", 0)
            .aboard("Worm", "", "B", 0);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 2.0 / 24).poisson("Worm", 0.8 / 24);
    BuyList list = list(maker, forecast);
    assertEquals(
        List.of("1 Worm", "2 Jig", "1 Worm", "3 Jig"), order(list), "5 Jig and 2 Worm reach 0.95");
    assertTrue(list.lines().stream().allMatch(BuyList.Line::bought));
    assertEquals(
        List.of("1.00", "5.00", "6.00", "12.00"),
        list.lines().stream().map(line -> line.cumulativeCost().get().toPlainString()).toList());
    assertEquals(2.0, list.lines().get(1).shortageBeforePieces(), 1e-9);
    // R 4.2.2: E(Y-2)+ for Poisson(2), as in the loss table
    assertEquals(0.54134113, list.lines().get(1).shortageAfterPieces(), 1e-8);
  }

  /** R 4.2.2: qnbinom(0.95, size = 2, mu = 20000) = 47440. */
  @Test
  void thousandsOfPacksAreBoughtInLots() {
    SeasonMaker maker = new SeasonMaker().priced("Jig", 1, "1.00").aboard("Jig", "", "B", 0);
    KnownForecast forecast = new KnownForecast().negBin("Jig", 20_000 / 24.0, 2);
    SparesReport spares = SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
    assertEquals(47_440, spares.rows().get(0).buyPacks(), 100, "to a lot");
    assertTrue(new PackSource(spares.rows(), Optional.empty()).wanted().size() <= 1_000);
    BuyList list = BuyPlanner.plan(maker.season(), spares, forecast);
    BuyList.Line all = list.lines().get(0);
    assertEquals(1, list.lines().size());
    assertEquals(spares.rows().get(0).buyPacks(), all.packs());
    assertEquals(0, new BigDecimal(all.packs()).compareTo(all.cumulativeCost().get()));
  }

  @Test
  void importanceWeighsShortage() {
    SeasonMaker maker =
        new SeasonMaker()
            .priced("Jig", 1, "1.00")
            .style("Worm")
            .pack(1, "1.00")
            .importance(3)
            .aboard("Jig", "", "B", 0)
            .aboard("Worm", "", "B", 0);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 0.5 / 24).poisson("Worm", 0.4 / 24);
    assertEquals("Worm", list(maker, forecast).lines().get(0).item().style());
  }

  /** Whole packs of one piece at one price: all end at one chance of another loss (newsvendor). */
  @Test
  void moneyStopsWhereAnotherPieceIsWorthItAlike() {
    Random random = new Random(5);
    for (int round = 0; round < 60; round++) {
      SeasonMaker maker = new SeasonMaker().chance(0.999, true).budget(5 + random.nextInt(20) + "");
      KnownForecast forecast = new KnownForecast();
      for (int s = 0; s < 5; s++) {
        maker.style("S" + s).pack(1, "1.00").aboard("S" + s, "", "B", random.nextInt(3));
        forecast.negBin("S" + s, random.nextDouble() * 0.3, 0.6 + random.nextDouble());
      }
      SparesReport spares = SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
      BuyList list = BuyPlanner.plan(maker.season(), spares, forecast);
      double leastBought = 1;
      double mostLeft = 0;
      for (SparesRow row : spares.rows()) {
        int bought =
            list.lines().stream()
                .filter(line -> line.item().equals(row.item()) && line.bought())
                .mapToInt(BuyList.Line::pieces)
                .sum();
        if (bought > 0) {
          leastBought = Math.min(leastBought, row.losses().above(row.aboard() + bought - 1));
        }
        if (bought < row.buyPieces()) {
          mostLeft = Math.max(mostLeft, row.losses().above(row.aboard() + bought));
        }
      }
      assertTrue(leastBought >= mostLeft - 1e-12, leastBought + " < " + mostLeft);
    }
  }

  @Test
  void packsThatSaveNothingStandTogetherByItem() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(2)
            .priced("Rod", 1, "80.00")
            .aboard("Rod", "medium", "B", 0)
            .aboard("Rod", "heavy", "B", 0);
    assertEquals(List.of("2 Rod", "2 Rod"), order(list(maker, new KnownForecast())));
    // A budget for two still gives each item its first before one gets its second.
    assertEquals(
        List.of("1 Rod", "1 Rod", "1 Rod", "1 Rod"),
        order(list(maker.budget("160"), new KnownForecast())));
  }

  @Test
  void everyListIsFeasibleAndMoreMoneyNeverDoesWorse() {
    Random random = new Random(11);
    for (int round = 0; round < 40; round++) {
      SeasonMaker maker = new SeasonMaker();
      KnownForecast forecast = new KnownForecast();
      int styles = 3 + random.nextInt(5);
      for (int s = 0; s < styles; s++) {
        String style = "S" + s;
        maker
            .style(style)
            .pack(1 + random.nextInt(6), (1 + random.nextInt(30)) + "." + (10 + random.nextInt(89)))
            .importance(random.nextInt(4))
            .aboard(style, "a", "B", random.nextInt(4))
            .ashore(style, "b", "T", random.nextInt(4));
        forecast.negBin(style, random.nextDouble() * 0.4, 0.6 + random.nextDouble());
      }
      double before = Double.POSITIVE_INFINITY;
      for (int budget = 0; budget <= 240; budget += 12) {
        maker.budget(budget + ".00");
        SparesReport spares = SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
        BuyList list = BuyPlanner.plan(maker.season(), spares, forecast);
        assertTrue(list.spent().compareTo(new BigDecimal(budget)) <= 0);
        assertTrue(list.within().shortagePieces() <= before + 1e-9, "budget " + budget);
        assertEquals(0, list.gapPieces());
        before = list.within().shortagePieces();
        checkLines(list, spares);
      }
    }
  }

  private static void checkLines(BuyList list, SparesReport spares) {
    Map<ItemId, Integer> packs = new HashMap<>();
    BigDecimal running = BigDecimal.ZERO;
    BigDecimal inside = BigDecimal.ZERO;
    boolean outsideSeen = false;
    for (int i = 0; i < list.lines().size(); i++) {
      BuyList.Line line = list.lines().get(i);
      assertEquals(i + 1, line.rank());
      running = running.add(line.cost().get());
      assertEquals(0, running.compareTo(line.cumulativeCost().get()));
      assertTrue(line.shortageAfterPieces() <= line.shortageBeforePieces());
      outsideSeen &= i > 0 && list.lines().get(i - 1).fills() == line.fills();
      assertFalse(outsideSeen && line.bought(), "what the budget pays for stands first");
      outsideSeen |= !line.bought();
      inside = line.bought() ? inside.add(line.cost().get()) : inside;
      packs.merge(line.item(), line.packs(), Integer::sum);
    }
    assertEquals(0, inside.compareTo(list.spent()));
    assertEquals(0, running.compareTo(list.wanted()));
    for (SparesRow row : spares.rows()) {
      assertEquals(row.buyPacks(), packs.getOrDefault(row.item(), 0));
    }
  }

  @Test
  void nothingWantedGivesAnEmptyList() {
    SeasonMaker maker = new SeasonMaker().priced("Jig", 1, "2.00").aboard("Jig", "", "B", 9);
    BuyList list = list(maker, new KnownForecast());
    assertTrue(list.lines().isEmpty());
    assertEquals(Optional.empty(), list.more());
    assertEquals(0, list.wanted().signum());
  }

  @Test
  void packsForNothingAreTakenAsLongAsTheySaveAnything() {
    SeasonMaker maker = new SeasonMaker().priced("Jig", 1, "0.00").aboard("Jig", "", "B", 5);
    BuyList list = list(maker, new KnownForecast().poisson("Jig", 2.0 / 24));
    // SciPy: poisson.sf([10, 11, 12], 2) = 8.3e-06 1.4e-06 2.1e-07; the seventh brings it to 12
    assertEquals(
        List.of(new BuyList.More.Change(new ItemId("Jig", "", ""), 7, 7)),
        list.more().get().packs());
    assertEquals(0, list.wanted().signum());
  }
}
