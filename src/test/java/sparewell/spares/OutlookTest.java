package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SparesPlannerTest.plan;

import org.junit.jupiter.api.Test;
import sparewell.season.SeasonMaker;

/** The chance that nothing important runs out. */
class OutlookTest {
  @Test
  void outlookIsTheChanceThatNoImportantItemRunsOut() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .style("Toy")
            .importance(0.5)
            .style("Worm")
            .importance(2)
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
  }

  private static Outlook outlook(double jig, double toy, int jigs) {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .importance(jig)
            .style("Toy")
            .importance(toy)
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
  }

  /** ppois(c(2, 5), 2) = 0.6766764, 0.9834364; R 4.2.2: five are wanted for 0.95. */
  @Test
  void outlookAfterBuyingCountsWhatIsBought() {
    Outlook outlook = outlook(1, 1, 2);
    assertEquals(0.6766764, outlook.nowProbability().getAsDouble(), 1e-7);
    assertEquals(0.6766764, outlook.afterBringingProbability().getAsDouble(), 1e-7);
    assertEquals(0.9834364, outlook.afterBuyingProbability().getAsDouble(), 1e-7);
  }
}
