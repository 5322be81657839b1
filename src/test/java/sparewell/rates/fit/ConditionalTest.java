package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rates and family means at one set of hyperparameters, against the conjugate model: without extra
 * variation the losses y in t hours of a style with Gamma(a, mean m) are negative binomial, and its
 * rate given them and m is Gamma(a + y, rate a/m + t).
 */
class ConditionalTest {
  private static final double NO_EXTRA_VARIATION = 1e9; // days of a trip, so that size is large
  private static final double LOG_RATE = -2.1;

  private static Hyper hyper(double spread, double shape) {
    return new Hyper(LOG_RATE, spread, shape, 100, new double[0]);
  }

  private static Observation seen(int style, double hours, int lost) {
    return new Observation(style, 0, hours, NO_EXTRA_VARIATION, Observation.MIX, lost, false, 1);
  }

  /** Three families: two styles seen and one not, one style seen, one not seen. */
  private static final List<Observation> LOG =
      List.of(seen(0, 20, 9), seen(1, 3, 0), seen(3, 700, 70), seen(0, 2, 1));

  private static final double[] HOURS = {22, 3, 0, 700, 0};
  private static final int[] LOST = {10, 0, 0, 70, 0};

  private static FitData data(List<Observation> log) {
    return new FitData(
        new FitInput(List.of(0, 0, 0, 1, 2), 3, 0, log), Hyperprior.WEAK, Beliefs.NONE);
  }

  private static double logChance(int style, double a, double mean) {
    double b = a / mean;
    int y = LOST[style];
    double t = HOURS[style];
    double sum = t == 0 ? 0 : a * Math.log(b / (b + t)) + y * Math.log(1 / (b + t));
    for (Observation o : LOG) {
      if (o.style() == style) {
        sum -= Gamma.logGamma(o.lostPieces() + 1.0);
      }
    }
    return sum + Gamma.logGamma(a + y) - Gamma.logGamma(a);
  }

  /** Integral over ln m of its normal prior, the chance of the styles' data, and f(m). */
  private static double integral(int[] styles, double spread, double shape, DoubleUnaryOperator f) {
    double sum = 0;
    double step = spread / 40;
    for (int i = -8 * 40; i <= 8 * 40; i++) {
      double mean = Math.exp(LOG_RATE + i * step);
      double log = -(i * step) * (i * step) / (2 * spread * spread);
      for (int style : styles) {
        log += logChance(style, shape, mean);
      }
      sum += Math.exp(log) * f.applyAsDouble(mean) * step / (spread * Math.sqrt(2 * Math.PI));
    }
    return sum;
  }

  @ParameterizedTest
  @CsvSource({"0.12, 60", "0.3, 6", "0.8, 1", "0.3, 0.3", "0.8, 40"})
  void agreesWithBruteForce(double spread, double shape) {
    FitData data = data(LOG);
    Conditional given = new Conditional(data, hyper(spread, shape));
    int[][] families = {{0, 1}, {3}, {}};
    int[] familyOf = {0, 0, 0, 1, 2};
    double log =
        Math.log(integral(families[0], spread, shape, mean -> 1))
            + Math.log(integral(families[1], spread, shape, mean -> 1));
    // Hours count as they are in a chance of losses; the fit leaves that constant out.
    assertEquals(log, given.logEvidence(), 2e-3);
    for (int s = 0; s < familyOf.length; s++) {
      int y = LOST[s];
      double t = HOURS[s];
      double exact =
          integral(families[familyOf[s]], spread, shape, mean -> (shape + y) / (shape / mean + t))
              / integral(families[familyOf[s]], spread, shape, mean -> 1);
      double[] weights = given.rate(s, familyOf[s]);
      double mean = 0;
      for (int i = 0; i < weights.length; i++) {
        mean += weights[i] * data.styles[s].rate[i];
      }
      assertEquals(1, Arrays.stream(weights).sum(), 1e-5);
      assertEquals(exact, mean, 3e-3 * exact, "style " + s);
      assertEquals(
          mean, expected(given, s, familyOf[s], data.styles[s].rate), 1e-9 * mean, "style " + s);
    }
  }

  private static double expected(Conditional given, int style, int family, double[] function) {
    double sum = 0;
    for (int j = 0; j < given.meanWeights(family).length; j++) {
      double[] weights = given.given(style, given.mean(family, j));
      for (int i = 0; i < weights.length; i++) {
        sum += given.meanWeights(family)[j] * weights[i] * function[i];
      }
    }
    return sum;
  }

  @Test
  void anEmptyLogLeavesThePrior() {
    FitData empty = data(List.of());
    Conditional given = new Conditional(empty, hyper(0.5, 4));
    assertEquals(0, given.logEvidence());
    for (int f = 0; f < 3; f++) {
      double[] weights = given.meanWeights(f);
      double mean = 0;
      double square = 0;
      for (int j = 0; j < weights.length; j++) {
        double away = given.mean(f, j) * FitData.STEP - LOG_RATE;
        mean += weights[j] * away;
        square += weights[j] * away * away;
      }
      assertEquals(0, mean, 1e-3);
      assertEquals(0.25, square - mean * mean, 1e-3);
    }
  }

  @Test
  void dataAndFamilyMayBeFarApart() {
    // 800 pieces in 8 hours of a style whose family loses 0.1 an hour, all but alike.
    for (int lost : new int[] {800, 2_000_000}) {
      FitData data =
          data(
              List.of(
                  new Observation(0, 0, 8, 1, Observation.MIX, lost, false, 1),
                  new Observation(1, 0, 90, 1, Observation.MIX, 9, false, 1)));
      for (double shape : new double[] {0.1, 4, 300}) {
        Hyper hyper = new Hyper(LOG_RATE, 0.01, shape, 1e4, new double[0]);
        Conditional given = new Conditional(data, hyper);
        assertTrue(Double.isFinite(given.logEvidence()), "shape " + shape);
        for (int s = 0; s < 5; s++) {
          double[] weights = given.rate(s, s < 3 ? 0 : s - 2);
          assertEquals(1, Arrays.stream(weights).sum(), 1e-5, "style " + s);
          double mean = expected(given, s, s < 3 ? 0 : s - 2, data.styles[s].rate);
          assertTrue(Double.isFinite(mean));
        }
      }
    }
  }
}
