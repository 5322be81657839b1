package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rates that wander from the log to the next trip. */
class RatePointsTest {
  private static final double SIZE = 2;

  private final RatePosterior posterior = posterior();

  private static RatePosterior posterior() {
    List<Observation> log =
        List.of(
            new Observation(0, 0, 20, 4, Observation.MIX, 12, false, 1),
            new Observation(1, 0, 10, 1, Observation.MIX, 0, false, 1));
    FitData data = new FitData(new FitInput(List.of(0, 0), 1, 0, log));
    return new RatePosterior(data, new Hyper(Math.log(0.1), 0.4, 4, SIZE, new double[0]), true);
  }

  private RatePoints points(int style, double variance) {
    return new RatePoints(posterior.nodes(style), posterior.weights(style), variance);
  }

  private static double moment(RatePoints points, int power) {
    double sum = 0;
    for (int i = 0; i < points.count() - 1; i++) {
      sum += points.weight(i) * Math.pow(points.logFirst() + i * points.step(), power);
    }
    return sum;
  }

  private static double logVariance(RatePoints points) {
    return moment(points, 2) - moment(points, 1) * moment(points, 1);
  }

  @ParameterizedTest
  @CsvSource({"0, 1e-6", "0, 0.003", "0, 0.03", "0, 0.5", "1, 0.03", "1, 0.5"})
  void theMeanStaysAndTheVarianceGrowsByWhatIsAsked(int style, double variance) {
    RatePoints before = points(style, 0);
    RatePoints after = points(style, variance);
    double mean = 0;
    double all = 0;
    for (int i = 0; i < after.count(); i++) {
      mean += after.weight(i) * after.rate(i);
      all += after.weight(i);
    }
    assertEquals(1, all, 1e-9);
    assertEquals(posterior.meanRate(style), mean, 1e-9 * mean);
    // The tail, of which the moments know nothing, holds next to nothing here.
    assertEquals(logVariance(before) + variance, logVariance(after), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({"0.003", "0.03", "0.3"})
  void comesNearALogNormalFactorOfMeanOne(double variance) {
    RatePoints before = points(0, 0);
    RatePoints after = points(0, variance);
    NormalDistribution factor = new NormalDistribution(-variance / 2, Math.sqrt(variance));
    double exact = 0;
    for (int k = 0; k < 2000; k++) {
      double times = Math.exp(factor.inverseCumulativeProbability((k + 0.5) / 2000));
      for (int i = 0; i < before.count(); i++) {
        exact += before.weight(i) * none(before.rate(i) * times) / 2000;
      }
    }
    double got = 0;
    for (int i = 0; i < after.count(); i++) {
      got += after.weight(i) * none(after.rate(i));
    }
    assertEquals(exact, got, 1e-3 * variance);
  }

  /** Chance that nothing is lost in 8 hours. */
  private static double none(double rate) {
    return Math.pow(1 + 8 * rate / SIZE, -SIZE);
  }

  @Test
  void looksBackAsItLooksForward() {
    RatePoints after = points(1, 0.04);
    double[] values = new double[after.count()];
    double forward = 0;
    for (int i = 0; i < values.length; i++) {
      values[i] = none(after.rate(i));
      forward += after.weight(i) * values[i];
    }
    double[] before = after.expectation(posterior.nodes(1).count(), values);
    double[] weights = posterior.weights(1);
    assertEquals(weights.length, before.length);
    double back = 0;
    for (int i = 0; i < before.length; i++) {
      back += weights[i] * before[i];
    }
    assertEquals(forward, back, 1e-12);
  }

  @Test
  void ratesThatStayAreThoseOverTheLog() {
    RatePoints stay = points(0, 0);
    double[] weights = new double[stay.count()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = stay.weight(i);
    }
    assertArrayEquals(posterior.weights(0), weights);
    assertEquals(posterior.nodes(0).rate(3), stay.rate(3), 1e-12);
    assertEquals(posterior.nodes(0).tail().rate(), stay.rate(weights.length - 1));
    assertArrayEquals(weights, stay.expectation(weights.length - 1, weights));
  }

  @Test
  void aFarWalkOfAWellKnownRateNeedsFewPoints() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < 400; t++) {
      log.add(new Observation(0, t, 4, 1, Observation.MIX, t % 3, false, 1));
    }
    RatePosterior known =
        new RatePosterior(
            new FitData(new FitInput(List.of(0), 1, 0, log)),
            new Hyper(Math.log(0.1), 0.4, 4, SIZE, new double[0]),
            true);
    RatePoints stay = new RatePoints(known.nodes(0), known.weights(0), 0);
    RatePoints walk = new RatePoints(known.nodes(0), known.weights(0), 0.2);
    assertTrue(walk.count() < 40, walk.count() + " points");
    double mean = 0;
    for (int i = 0; i < walk.count(); i++) {
      mean += walk.weight(i) * walk.rate(i);
    }
    assertEquals(known.meanRate(0), mean, 1e-9 * mean);
    assertEquals(logVariance(stay) + 0.2, logVariance(walk), 1e-6);
  }
}
