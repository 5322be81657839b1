package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import sparewell.rates.LossForecast.Stage;
import sparewell.rates.LossForecast.StagedStock;
import sparewell.rates.fit.Beliefs;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Hyperprior;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

/** Stocks through several events, more being bought between, against closed forms and play. */
class StagedChanceTest {
  private static final ItemId RED = new ItemId("Shad", "", "red");
  private static final ItemId BLUE = new ItemId("Shad", "", "blue");
  private static final ItemId BROWN = new ItemId("Toad", "", "brown");

  private static Exposure hours(double hours, int ahead, ItemId... among) {
    return new Exposure(hours, 1, Optional.empty(), List.of(among), ahead);
  }

  private static LossModel model() {
    SeasonMaker book =
        new SeasonMaker().style("Shad", "Soft", "red", "blue").style("Toad", "Soft", "brown");
    Random random = new Random(4);
    for (int t = 0; t < 10; t++) {
      String id = "T" + t;
      book.trip(id, 10 * t, 8, "").thrown(id, "Shad", 2).thrown(id, "Toad", 4);
      if (random.nextInt(3) > 0) {
        book.lost(id, "Shad", random.nextInt(3) > 0 ? "red" : "blue", 1 + t % 2);
      }
      if (t % 3 == 0) {
        book.lost(id, "Toad", "brown", 1);
      }
    }
    return LossModel.fit(book.season());
  }

  @Test
  void aRunningPoissonSumWithinItsLimits() {
    // By hand: N1 <= 1 and N1 + N2 <= 2, means 0.7 and 1.1.
    double byHand = 0;
    for (int one = 0; one <= 1; one++) {
      double chance = Math.exp(-0.7) * Math.pow(0.7, one);
      for (int two = 0; two <= 2 - one; two++) {
        byHand += chance * Math.exp(-1.1) * Math.pow(1.1, two) / Gamma.gamma(two + 1);
      }
    }
    double[] lasts = StagedUse.lasts(new double[] {0.7, 1.1, 0}, new int[] {1, 2, 2});
    assertEquals(1.7 * Math.exp(-0.7), lasts[0], 1e-14);
    assertEquals(byHand, lasts[1], 1e-14);
    assertEquals(byHand, lasts[2], 1e-14);
    // Large stocks: where no more is bought, the total decides.
    double[] large = StagedUse.lasts(new double[] {200, 190}, new int[] {400, 400});
    assertEquals(new PoissonDistribution(390).cumulativeProbability(400), large[1], 1e-9);
  }

  @Test
  void lossesAtTwoEventsShareOneRate() {
    // One family and no spread but that of the rates: gamma-Poisson, so that losses at two events
    // are negative multinomial given what was lost before (Johnson, Kotz, Balakrishnan, Discrete
    // Multivariate Distributions, ch. 36, from memory).
    double rate = 0.2;
    double shape = 2;
    Hyperprior sure =
        new Hyperprior(
            Math.log(rate) - Math.log1p(1 / shape) / 2,
            0.01,
            Math.log(0.006),
            1e-6,
            -Math.log(shape) / 2,
            1e-6,
            Math.log(9_000),
            1e-6,
            0.5,
            Hyperprior.Walk.NONE);
    FitInput log =
        new FitInput(
            List.of(0),
            1,
            0,
            List.of(new Observation(0, 0, 24.5, 1, Observation.MIX, 4, false, 1)));
    StagedChance staged =
        new StagedChance(
            new RateFutures(RateFit.of(log, sure, Beliefs.NONE, 0), 4_000),
            style -> 0,
            use -> new RateFit.Term(use.hours(), use.days(), Observation.MIX),
            item -> 1,
            (style, exposures) -> Map.of());
    double[] chances =
        staged.chances(
            List.of(
                new StagedStock(
                    "Shad",
                    List.of(
                        new Stage(List.of(hours(16, 1, RED)), Map.of(RED, 3)),
                        new Stage(List.of(hours(24, 1, RED)), Map.of(RED, 8))))),
            2);
    double a = shape + 4;
    double b = shape / rate + 24.5;
    double first = 0;
    double both = 0;
    for (int one = 0; one <= 3; one++) {
      for (int two = 0; two <= 400; two++) {
        double chance =
            Math.exp(
                Gamma.logGamma(a + one + two)
                    - Gamma.logGamma(a)
                    - Gamma.logGamma(one + 1)
                    - Gamma.logGamma(two + 1)
                    + a * Math.log(b / (b + 40))
                    + one * Math.log(16 / (b + 40))
                    + two * Math.log(24 / (b + 40)));
        first += chance;
        both += one + two <= 8 ? chance : 0;
      }
    }
    assertEquals(first, chances[0], 0.012);
    assertEquals(both, chances[1], 0.012);
    assertTrue(both < first * 0.95, "tells little");
  }

  @Test
  void withoutBuyingTheTotalDecides() {
    LossModel model = model();
    List<Exposure> shad = List.of(hours(6, 1, RED, BLUE), hours(9, 1, RED, BLUE));
    List<Exposure> toad = List.of(hours(10, 1, BROWN), hours(4, 1, BROWN));
    Map<ItemId, Integer> lures = Map.of(RED, 6, BLUE, 4);
    double exact =
        model.nothingRunsOut(
            List.of(
                StagedStock.of("Shad", shad, lures),
                StagedStock.of("Toad", toad, Map.of(BROWN, 2))));
    double[] staged =
        model.lastsThroughout(
            List.of(
                stock("Shad", shad, List.of(lures, lures)),
                stock("Toad", toad, List.of(Map.of(BROWN, 2), Map.of()))));
    assertEquals(exact, staged[1], 0.012);
    assertEquals(
        model.nothingRunsOut(
            List.of(
                StagedStock.of("Shad", shad.subList(0, 1), lures),
                StagedStock.of("Toad", toad.subList(0, 1), Map.of(BROWN, 2)))),
        staged[0],
        1e-12);
  }

  private static StagedStock stock(
      String style, List<Exposure> events, List<Map<ItemId, Integer>> pieces) {
    List<Stage> stages = new ArrayList<>();
    for (int j = 0; j < events.size(); j++) {
      stages.add(new Stage(List.of(events.get(j)), pieces.get(j)));
    }
    return new StagedStock(style, stages);
  }

  @Test
  void piecesPlayedOutOneByOne() {
    LossModel model = model();
    RateFutures futures = model.futures(4_000);
    RandomGenerator random = new Well19937c(8);
    double[][] walks = futures.rates(0, new int[] {1, 6});
    int lasted = 0;
    int times = 5 * futures.count();
    for (int i = 0; i < times; i++) {
      int k = i % futures.count();
      double[] rates = walks[k];
      double red = random.nextDouble();
      // Weights 2 and 1.3, say: a Beta number from two gammas.
      double one = new GammaDistribution(random, 2, 1).sample();
      red = one / (one + new GammaDistribution(random, 1.3, 1).sample());
      int[] left = {3, 2};
      boolean all = true;
      double[] use = {8, 12};
      for (int j = 0; j < 2; j++) {
        double size = futures.size(k);
        double mean = rates[j] * use[j] * new GammaDistribution(random, size, 1 / size).sample();
        int lost = mean < 1e-12 ? 0 : new PoissonDistribution(random, mean, 1e-9, 9_999).sample();
        for (int n = 0; n < lost; n++) {
          left[random.nextDouble() < red ? 0 : 1]--;
        }
        all &= left[0] >= 0 && left[1] >= 0;
        left[0] += 3;
      }
      lasted += all ? 1 : 0;
    }
    StagedChance staged =
        new StagedChance(
            futures,
            style -> 0,
            exposure -> new RateFit.Term(exposure.hours(), exposure.days(), Observation.MIX),
            item -> item.equals(RED) ? 2 : 1.3,
            (style, exposures) -> Map.of());
    double[] chances =
        staged.chances(
            List.of(
                stock(
                    "Shad",
                    List.of(hours(8, 1, RED, BLUE), hours(12, 6, RED, BLUE)),
                    List.of(Map.of(RED, 3, BLUE, 2), Map.of(RED, 6)))),
            2);
    assertEquals((double) lasted / times, chances[1], 0.015);
  }

  /** Much use of one colour is not spread over all because a later event uses them all. */
  @Test
  void anEventOfOneColourBeforeOneOfAll() {
    LossModel model = model();
    Exposure one = hours(20, 1, RED);
    Exposure all = hours(2, 1, RED, BLUE);
    Map<ItemId, Integer> held = Map.of(RED, 3, BLUE, 3);
    double first = model.nothingRunsOut(List.of(StagedStock.of("Shad", List.of(one), held)));
    double both = model.nothingRunsOut(List.of(StagedStock.of("Shad", List.of(one, all), held)));
    assertTrue(both < first + 0.01, both + " of both, " + first + " of the first");
    double[] staged =
        model.lastsThroughout(List.of(stock("Shad", List.of(one, all), List.of(held, Map.of()))));
    assertEquals(staged[1], both, 0.012);
  }

  @Test
  void morePiecesNeverLowerAChance() {
    LossModel model = model();
    List<Exposure> toad = List.of(hours(10, 1, BROWN), hours(20, 3, BROWN));
    double before = 0;
    for (int bought = 0; bought < 6; bought++) {
      double[] now =
          model.lastsThroughout(
              List.of(stock("Toad", toad, List.of(Map.of(BROWN, 3), Map.of(BROWN, 3 + bought)))));
      assertTrue(now[1] >= before && now[1] <= now[0]);
      before = now[1];
    }
    assertThrows(IllegalArgumentException.class, () -> model.lastsThroughout(List.of()));
  }

  @Test
  void ratesWalkOnAndKeepTheirMean() {
    LossModel model = model();
    var soon = model.styleLosses("Shad", List.of(hours(20, 1, RED)));
    var late = model.styleLosses("Shad", List.of(hours(20, 40, RED)));
    assertEquals(soon.mean(), late.mean(), 1e-3 * soon.mean());
    assertTrue(late.above(3 * (int) soon.mean()) > soon.above(3 * (int) soon.mean()));
  }
}
