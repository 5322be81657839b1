package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.BuyPlannerTest.list;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

/** The purchases that more money would add, and those of an unlimited budget. */
class FurtherMoneyTest {
  @Test
  void saysWhatTwentyMoreBuys() {
    SeasonMaker maker =
        new SeasonMaker().budget("10").priced("Jig", 1, "10.00").aboard("Jig", "", "B", 0);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 2.0 / 24);
    BuyList list = list(maker, forecast);
    assertEquals(1, list.lines().get(0).packs());
    assertEquals(
        List.of(new BuyList.More.Change(new ItemId("Jig", "", ""), 2, 2)),
        list.more().get().packs());
    // R 4.2.2: loss table of Poisson(2), stock 1 and 3
    assertEquals(1.13533528, list.within().shortagePieces(), 1e-8);
    assertEquals(0.21801755, list.more().get().outcome().shortagePieces(), 1e-8);
    assertFalse(list.more().get().first());
    // Beyond the list, once it is paid: 5 reach the chance wanted.
    BuyList paid = list(maker.budget("55"), forecast);
    assertEquals(5, paid.lines().get(0).packs());
    assertEquals(2, paid.more().get().packs().get(0).packs());
    assertTrue(list(maker.budget("69"), forecast).more().isPresent(), "19 are left");
    assertEquals(Optional.empty(), list(maker.budget("70"), forecast).more(), "as much is left");
  }

  @Test
  void curveFallsFromNothingToEverything() {
    SeasonMaker maker =
        new SeasonMaker()
            .budget("3")
            .priced("Jig", 1, "2.00")
            .aboard("Jig", "a", "B", 0)
            .aboard("Jig", "b", "B", 0);
    BuyList list = list(maker, new KnownForecast().poisson("Jig", 0.3));
    List<BuyList.Point> curve = list.curve();
    assertEquals(0, curve.get(0).money().signum());
    assertEquals(0, curve.get(curve.size() - 1).money().compareTo(list.wanted()));
    for (int i = 1; i < curve.size(); i++) {
      assertTrue(curve.get(i).shortagePieces() < curve.get(i - 1).shortagePieces());
      assertTrue(
          curve.get(i).nothingRunsOutProbability().getAsDouble()
              > curve.get(i - 1).nothingRunsOutProbability().getAsDouble());
    }
  }

  /**
   * Ten money a piece, 20 more: ppois(n, mean, lower.tail = FALSE), R 4.2.2: beyond the list a
   * sixth Jig saves ppois(5, 2) = 0.0166, a seventh 0.0045; a third Worm ppois(2, 0.6) = 0.0231, a
   * fourth 0.0034. So one of each.
   */
  @Test
  void furtherMoneyBuysTheNextPackOfEachAndThenTheOneAfter() {
    SeasonMaker maker =
        new SeasonMaker()
            .priced("Jig", 1, "10.00")
            .priced("Worm", 1, "10.00")
            .aboard("Jig", "", "B", 5)
            .aboard("Worm", "", "B", 2);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 2.0 / 24).poisson("Worm", 0.6 / 24);
    BuyList list = list(maker, forecast);
    assertTrue(list.lines().isEmpty());
    assertEquals(
        List.of(
            new BuyList.More.Change(new ItemId("Jig", "", ""), 1, 1),
            new BuyList.More.Change(new ItemId("Worm", "", ""), 1, 1)),
        list.more().get().packs());
    assertFalse(list.more().get().first(), "it goes beyond the list");
  }

  @Test
  void withoutABudgetTheFirstMoneyOfTheListIsTold() {
    SeasonMaker maker = new SeasonMaker().priced("Jig", 3, "10.00").aboard("Jig", "", "B", 0);
    BuyList.More more = list(maker, new KnownForecast().poisson("Jig", 9.0 / 24)).more().get();
    assertTrue(more.first());
    assertEquals(List.of(new BuyList.More.Change(new ItemId("Jig", "", ""), 2, 6)), more.packs());
    assertEquals(9, more.before().shortagePieces(), 1e-9);
  }

  @Test
  void furtherMoneyMayBeSpentToTheLastCent() {
    KnownForecast forecast = new KnownForecast().poisson("Jig", 2.0 / 24);
    SeasonMaker exact = new SeasonMaker().priced("Jig", 1, "20.00").aboard("Jig", "", "B", 5);
    assertEquals(1, list(exact, forecast).more().get().packs().get(0).packs());
    SeasonMaker dear = new SeasonMaker().priced("Jig", 1, "20.01").aboard("Jig", "", "B", 5);
    assertEquals(Optional.empty(), list(dear, forecast).more());
  }

  @Test
  void withoutAnythingWatchedThereIsNoChance() {
    SeasonMaker maker =
        new SeasonMaker().style("Rod").pack(1, "80.00").floor(1).aboard("Rod", "", "B", 0);
    assertTrue(list(maker, new KnownForecast()).within().nothingRunsOutProbability().isEmpty());
  }
}
