package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.junit.jupiter.api.Test;
import sparewell.reference.Reference;

/** Variance of the random walk of rates. */
class RandomWalkTest {
  private static final int[] TRIPS = {0, 1, 5};
  private static final double[] ERRORS = {0.5, -1, 2};
  private static final double[] INFORMATION = {2, 0.5, 1};
  private static final double[] ONES = {1, 1, 1};

  /** The level of a published series walks at random, in units of its irregular variance. */
  @Test
  void theLikelihoodIsHighestWhereAPublishedFitHasIt() {
    // Durbin and Koopman, Time Series Analysis by State Space Methods, 2nd ed. (2012), sec. 2.10:
    // variances 15098.5 (irregular) and 1469.2 (level), from memory; maximising the likelihood anew
    // by another program gave 15098.5 and 1469.2.
    List<Reference.Row> rows = Reference.read("level-series.csv");
    double[] errors = rows.stream().mapToDouble(row -> row.number("flow") - 919.35).toArray();
    for (int i = 0; i < errors.length; i++) {
      errors[i] /= Math.sqrt(15098.5);
    }
    double[] information = new double[errors.length];
    Arrays.fill(information, 1);
    int[] trips = rows.stream().mapToInt(row -> row.whole("number")).toArray();
    RandomWalk.Trips series = new RandomWalk.Trips(trips, errors, information, information);
    double best = 0;
    for (double q = 0.05; q < 0.2; q += 0.0001) {
      best =
          RandomWalk.logLikelihood(series, q) > RandomWalk.logLikelihood(series, best) ? q : best;
    }
    assertEquals(1469.2 / 15098.5, best, 0.0002);
  }

  @Test
  void theLikelihoodIsThatOfAWalkSeenWithErrors() {
    RandomWalk.Trips style = new RandomWalk.Trips(TRIPS, ERRORS, INFORMATION, ONES);
    double constant = RandomWalk.logLikelihood(style, 0.3) - direct(0.3);
    for (double q : new double[] {0, 0.001, 2}) {
      assertEquals(direct(q), RandomWalk.logLikelihood(style, q) - constant, 1e-9);
    }
  }

  private static double direct(double q) {
    double[][] covariance = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        covariance[i][j] =
            1e3 + q * Math.min(TRIPS[i], TRIPS[j]) + (i == j ? 1 / INFORMATION[i] : 0);
      }
    }
    return Math.log(new MultivariateNormalDistribution(new double[3], covariance).density(ERRORS));
  }

  @Test
  void theNextTripLiesAThirdOfAnEvenLogOffItsMean() {
    int n = 40;
    int[] trips = new int[n];
    double[] even = new double[n];
    for (int t = 0; t < n; t++) {
      trips[t] = t;
      even[t] = 7; // weight and information
    }
    RandomWalk.Trips log = new RandomWalk.Trips(trips, even, even, even);
    // Sum of (k/n)^2 for k = 1, ..., n.
    double exact = (n + 1) * (2 * n + 1) / (6.0 * n);
    assertEquals(exact, RandomWalk.tripsToWalk(log, n, 0), 1e-12);
    assertEquals(exact + 10, RandomWalk.tripsToWalk(log, n + 10, 0), 1e-12);
    // A family that tells three times as much as the log leaves a quarter of the walk, squared.
    assertEquals(exact / 16, RandomWalk.tripsToWalk(log, n, 3 * 49 * n), 1e-12);
  }

  @Test
  void tripsThatTellMoreCountMore() {
    double[] ones = {1, 1};
    int[] trips = {0, 10};
    RandomWalk.Trips style = new RandomWalk.Trips(trips, ones, new double[] {1, 3}, ones);
    assertEquals(10 / 16.0 + 5, RandomWalk.tripsToWalk(style, 15, 0), 1e-12);
    RandomWalk.Trips faded =
        new RandomWalk.Trips(trips, ones, new double[] {2, 3}, new double[] {0.5, 1});
    assertEquals(10 / 16.0 + 5, RandomWalk.tripsToWalk(faded, 15, 0), 1e-12);
    double[] none = {};
    assertEquals(
        0, RandomWalk.tripsToWalk(new RandomWalk.Trips(new int[0], none, none, none), 5, 2));
  }

  /** Six styles, each losing a piece on every so-many-th trip, which changes half way. */
  private static double[] walk(int trips, int before, int after) {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      for (int s = 0; s < 6; s++) {
        int every = (t < trips / 2) == (s < 3) ? before : after;
        int lost = (t + s) % every == 0 ? 2 : 0;
        log.add(new Observation(s, t, 4, 1, Observation.MIX, lost, false, 1));
      }
    }
    RateFit fit = RateFit.of(new FitInput(List.of(0, 0, 0, 0, 0, 0, 0), 1, 0, log));
    return new double[] {fit.walk().variance(0, 0), fit.walk().variance(6, 0)};
  }

  @Test
  void ratesThatChangeWalkMoreThanRatesThatStay() {
    double[] stay = walk(60, 4, 4);
    double[] change = walk(60, 2, 8);
    assertTrue(change[0] > 3 * stay[0], change[0] + " and " + stay[0]);
    assertEquals(0, change[1], "a style without trips has its family's rate of today");
  }

  @Test
  void aLongLogOfRatesThatStaySaysSo() {
    // Under the prior alone, four times the trips would leave four times the variance.
    double few = walk(100, 4, 4)[0];
    double many = walk(400, 4, 4)[0];
    assertTrue(many < 2.5 * few, many + " and " + few);
  }

  @Test
  void aTripThatRanOutShowsNoErrorButCounts() {
    double[] ones = {1, 1, 1, 1};
    int[] trips = {0, 1, 3, 5};
    RandomWalk.Trips ranOut =
        new RandomWalk.Trips(trips, new double[] {0.5, -1, Double.NaN, 2}, ones, ones);
    RandomWalk.Trips without = new RandomWalk.Trips(TRIPS, ERRORS, ONES, ONES);
    assertEquals(
        RandomWalk.logLikelihood(without, 0.3), RandomWalk.logLikelihood(ranOut, 0.3), 1e-12);
    assertEquals((1 + 2 * 4 + 2 * 9) / 16.0 + 1, RandomWalk.tripsToWalk(ranOut, 6, 0), 1e-12);
  }

  /** Pieces of a style on a trip. */
  private interface Losses {
    double mean(int style, int trip);
  }

  /** Styles of one family, each lost at random, and on some trips much more. */
  private static FitInput log(int styles, int trips, long seed, Losses losses) {
    Random random = new Random(seed);
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      for (int s = 0; s < styles; s++) {
        double mean = losses.mean(s, t);
        if (mean > 0) {
          int lost = -1;
          for (double p = 1; p > Math.exp(-mean); p *= random.nextDouble()) {
            lost++;
          }
          log.add(new Observation(s, t, 4, 1, Observation.MIX, lost, false, 1));
        }
      }
    }
    return new FitInput(Collections.nCopies(styles + 1, 0), 1, 0, log);
  }

  /** The advice is as if rates stayed, or more careful. */
  private static void careful(FitInput log) {
    RateFit fit = RateFit.of(log);
    RateFit staying =
        RateFit.of(log, Priors.weak(Hyperprior.Walk.NONE), Beliefs.NONE, RateFit.DRAWS);
    List<RateFit.Term> event = List.of(new RateFit.Term(24, 3, Observation.MIX));
    for (int s = 0; s < log.styles(); s++) {
      Estimate rate = fit.rate(s);
      assertTrue(rate.low90() < rate.mean() && rate.mean() < rate.high90(), "style " + s);
      assertTrue(rate.low90() <= staying.rate(s).low90() * 1.001, "style " + s);
      assertTrue(rate.high90() >= staying.rate(s).high90() * 0.999, "style " + s);
      int carry = fit.losses(s, event).quantile(0.95);
      assertTrue(carry >= staying.losses(s, event).quantile(0.95), "style " + s);
      assertTrue(carry <= 2 * staying.losses(s, event).quantile(0.95), "style " + s);
    }
  }

  @Test
  void aBoxOverboardLeavesTheOtherStylesAlone() {
    FitInput log = log(4, 300, 1, (style, trip) -> style == 0 && trip == 189 ? 60 : 0.4);
    careful(log);
    assertTrue(RateFit.of(log).walk().variance(1, 0) < 0.1);
  }

  @Test
  void ratesThatSwingWithTheYearAreAdvisedWithCare() {
    careful(log(4, 200, 2, (style, trip) -> Math.exp(0.8 * Math.sin(Math.PI * trip / 25)) / 2));
    // One that was last thrown long ago.
    careful(
        log(
            4,
            400,
            3,
            (style, trip) ->
                style == 0 && trip > 60 ? 0 : Math.exp(0.8 * Math.sin(Math.PI * trip / 25)) / 2));
  }

  @Test
  void aStyleThatHardlySaysAnythingHardlyWanders() {
    FitInput log = log(4, 200, 4, (style, trip) -> style > 0 ? 0.4 : trip > 0 ? 0 : 0.4);
    FitInput shorter =
        new FitInput(
            log.familyOfStyle(),
            1,
            0,
            log.observations().stream()
                .map(o -> o.style() > 0 ? o : new Observation(0, 0, 0.01, 1, -1, 0, false, 1))
                .toList());
    RateFit fit = RateFit.of(shorter);
    // Style 4 was never thrown.
    assertEquals(fit.rate(4).low90(), fit.rate(0).low90(), 0.01 * fit.rate(4).low90());
    assertEquals(fit.rate(4).high90(), fit.rate(0).high90(), 0.01 * fit.rate(4).high90());
  }

  @Test
  void aHalfLifeDoesNotHideThatRatesWander() {
    Losses turning = (style, trip) -> trip < 40 == style < 2 ? 0.2 : 1.6;
    FitInput log = log(4, 80, 5, turning);
    FitInput faded =
        new FitInput(
            log.familyOfStyle(),
            1,
            0,
            log.observations().stream()
                .map(
                    o ->
                        new Observation(
                            o.style(),
                            o.trip(),
                            4,
                            1,
                            -1,
                            o.lostPieces(),
                            false,
                            Math.pow(2, (o.trip() - 79) / 20.0)))
                .toList());
    double all = RateFit.of(log).walk().variance(0, 0);
    double recent = RateFit.of(faded).walk().variance(0, 0);
    assertTrue(recent > all / 2, recent + " and " + all);
  }

  @Test
  void aWalkOnTheGridKeepsTheMeanRateAndHasItsVariance() {
    for (double step : new double[] {0.03, 0.15}) {
      for (double variance : new double[] {0, 0.001, 0.02, 0.25}) {
        double[] chances = RandomWalk.chances(variance, step);
        int m = chances.length / 2;
        double all = 0;
        double rate = 0;
        double mean = 0;
        double square = 0;
        for (int j = 0; j < chances.length; j++) {
          double x = (j - m) * step;
          all += chances[j];
          rate += chances[j] * Math.exp(x);
          mean += chances[j] * x;
          square += chances[j] * x * x;
        }
        assertEquals(1, all, 2e-4);
        assertEquals(1, rate, 5e-4);
        assertEquals(variance, square - mean * mean, 5e-3 * variance + 1e-12);
      }
    }
    double[] there = RandomWalk.forward(new double[] {0, 0, 1, 0}, new double[] {0.2, 0.5, 0.3});
    assertArrayEquals(new double[] {0, 0, 0.2, 0.5, 0.3, 0}, there, 1e-15);
  }
}
