package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.junit.jupiter.api.Test;
import sparewell.reference.Reference;

/** How far rates wander. */
class WanderTest {
  private static final int[] TRIPS = {0, 1, 5};
  private static final double[] ERRORS = {0.5, -1, 2};
  private static final double[] INFORMATION = {2, 0.5, 1};

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
    Wander series = new Wander(trips, errors, information);
    double best = 0;
    for (double q = 0.05; q < 0.2; q += 0.0001) {
      best = series.logLikelihood(q) > series.logLikelihood(best) ? q : best;
    }
    assertEquals(1469.2 / 15098.5, best, 0.0002);
  }

  @Test
  void theLikelihoodIsThatOfAWalkSeenWithErrors() {
    Wander style = new Wander(TRIPS, ERRORS, INFORMATION);
    double constant = style.logLikelihood(0.3) - direct(0.3);
    for (double q : new double[] {0, 0.001, 2}) {
      assertEquals(direct(q), style.logLikelihood(q) - constant, 1e-9);
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
      even[t] = 7;
    }
    // Sum of (k/n)^2 for k = 1, ..., n.
    double exact = (n + 1) * (2 * n + 1) / (6.0 * n);
    assertEquals(exact, new Wander(trips, even, even).tripsToWander(n), 1e-12);
    assertEquals(exact + 10, new Wander(trips, even, even).tripsToWander(n + 10), 1e-12);
  }

  @Test
  void tripsThatTellMoreCountMore() {
    Wander style = new Wander(new int[] {0, 10}, new double[2], new double[] {1, 3});
    assertEquals(10 / 16.0 + 5, style.tripsToWander(15), 1e-12);
    assertEquals(0, new Wander(new int[0], new double[0], new double[0]).tripsToWander(5));
  }

  /** Six styles, each losing a piece on every so manieth trip, which changes half way. */
  private static double[] wander(int trips, int before, int after) {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      for (int s = 0; s < 6; s++) {
        int every = (t < trips / 2) == (s < 3) ? before : after;
        int lost = (t + s) % every == 0 ? 2 : 0;
        log.add(new Observation(s, t, 4, 1, Observation.MIX, lost, false, 1));
      }
    }
    RateFit fit = RateFit.of(new FitInput(List.of(0, 0, 0, 0, 0, 0, 0), 1, 0, log));
    Draw draw = fit.draws().get(0);
    return new double[] {draw.wander(0), draw.wander(6)};
  }

  @Test
  void ratesThatChangeWanderMoreThanRatesThatStay() {
    double[] stay = wander(60, 4, 4);
    double[] change = wander(60, 2, 8);
    assertTrue(change[0] > 3 * stay[0], change[0] + " and " + stay[0]);
    assertEquals(0, change[1], "a style without trips has its family's rate of today");
  }

  @Test
  void aLongLogOfRatesThatStaySaysSo() {
    // Under the prior alone, four times the trips would leave four times the variance.
    assertTrue(wander(400, 4, 4)[0] < 1.5 * wander(100, 4, 4)[0]);
  }

  @Test
  void aTripThatRanOutTellsNothingOfIt() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < 10; t++) {
      log.add(new Observation(0, t, 4, 1, Observation.MIX, t % 2, false, 1));
    }
    List<Observation> more = new ArrayList<>(log);
    more.add(new Observation(0, 9, 4, 1, Observation.MIX, 9, true, 1));
    FitData data = new FitData(new FitInput(List.of(0), 1, 0, log));
    List<Draw> draws = HyperPosterior.of(data, Hyperprior.WEAK, 32).draws();
    FitData other = new FitData(new FitInput(List.of(0), 1, 0, more));
    assertArrayEquals(
        Wander.variances(data, draws, Hyperprior.WEAK),
        Wander.variances(other, draws, Hyperprior.WEAK));
  }
}
