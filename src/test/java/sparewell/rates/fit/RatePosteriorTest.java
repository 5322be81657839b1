package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rates and family means at one set of hyperparameters, against the conjugate model: without extra
 * variation the losses y in t hours of a style with Gamma(a, mean m) are negative binomial, and its
 * rate given them and m is Gamma(a + y, rate a/m + t).
 */
class RatePosteriorTest {
  private static final double NO_EXTRA_VARIATION = 1e13;
  private static final double LOG_RATE = -2.1;

  private static Hyper hyper(double spread, double shape) {
    return new Hyper(LOG_RATE, spread, shape, NO_EXTRA_VARIATION, new double[0]);
  }

  private static Observation seen(int style, double hours, int lost) {
    return new Observation(style, 0, hours, 1, Observation.MIX, lost, false, 1);
  }

  /** Three families: two styles seen and one not, one style seen, one not seen. */
  private static final List<Observation> LOG =
      List.of(seen(0, 20, 9), seen(1, 3, 0), seen(3, 700, 70), seen(0, 2, 1));

  private static final double[] HOURS = {22, 3, 0, 700, 0};
  private static final int[] LOST = {10, 0, 0, 70, 0};

  private static FitData data(boolean rough) {
    return new FitData(new FitInput(List.of(0, 0, 0, 1, 2), 3, 0, LOG), rough);
  }

  private static double logChance(int style, double a, double mean) {
    double b = a / mean;
    int y = LOST[style];
    double t = HOURS[style];
    double sum = t == 0 ? 0 : a * Math.log(b / (b + t)) + y * Math.log(1 / (b + t));
    // y in one stretch of 20 hours and one of 2: the Poisson chances of the stretches.
    for (Observation o : LOG) {
      if (o.style() == style) {
        sum += o.lostPieces() * Math.log(o.hours()) - Gamma.logGamma(o.lostPieces() + 1.0);
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

  // The range of family means ends 4.5 standard deviations out, where 7e-6 are left.
  @ParameterizedTest
  @CsvSource({"0.02, 390", "0.3, 6", "0.8, 1", "0.3, 0.09", "0.8, 40"})
  void agreesWithBruteForce(double spread, double shape) {
    Hyper hyper = hyper(spread, shape);
    RatePosterior posterior = new RatePosterior(data(false), hyper, true);
    int[][] families = {{0, 1}, {3}, {}};
    int[] familyOf = {0, 0, 0, 1, 2};
    double log =
        Math.log(integral(families[0], spread, shape, mean -> 1))
            + Math.log(integral(families[1], spread, shape, mean -> 1));
    assertEquals(log, posterior.logEvidence(), 5e-5);
    assertEquals(log, new RatePosterior(data(false), hyper, false).logEvidence(), 5e-5);
    assertEquals(log, new RatePosterior(data(true), hyper, false).logEvidence(), 1e-3);
    for (int s = 0; s < familyOf.length; s++) {
      int y = LOST[s];
      double t = HOURS[s];
      double rate =
          integral(families[familyOf[s]], spread, shape, mean -> (shape + y) / (shape / mean + t))
              / integral(families[familyOf[s]], spread, shape, mean -> 1);
      double[] weights = posterior.weights(s);
      double mean = posterior.meanRate(s);
      assertEquals(1, Arrays.stream(weights).sum(), 1e-9);
      assertEquals(rate, mean, 1e-3 * rate, "style " + s);
      double variance = Gamma.trigamma(shape + y);
      assertEquals(variance, posterior.logVariance(s), 1e-6 * variance, "style " + s);
    }
  }

  @Test
  void whatWasTriedBeforeDoesNotMatter() {
    FitData used = data(false);
    for (double[] other : new double[][] {{0.02, 300}, {2.9, 0.1}, {0.4, 4}}) {
      new RatePosterior(used, new Hyper(5, other[0], other[1], 0.4, new double[0]), false);
      RatePosterior again = new RatePosterior(used, hyper(0.6, 3), true);
      RatePosterior fresh = new RatePosterior(data(false), hyper(0.6, 3), true);
      assertEquals(fresh.logEvidence(), again.logEvidence(), 1e-7);
      for (int s = 0; s < 5; s++) {
        assertEquals(fresh.logVariance(s), again.logVariance(s), 1e-7);
      }
    }
  }

  @Test
  void anEmptyLogLeavesThePrior() {
    FitData empty = new FitData(new FitInput(List.of(0, 0, 1), 2, 0, List.of()));
    RatePosterior posterior = new RatePosterior(empty, hyper(0.5, 4), true);
    assertEquals(0, posterior.logEvidence());
    // Family means are looked for up to 4.5 standard deviations from the prior's.
    FamilyPosterior family = posterior.family(1);
    double reach = 4.5 * 0.5;
    assertEquals(LOG_RATE - reach, family.mean(0) * posterior.kernel().unit(), 0.3);
    assertEquals(
        LOG_RATE + reach, family.mean(family.count() - 1) * posterior.kernel().unit(), 0.5);
    for (int s = 0; s < 3; s++) {
      double mean = posterior.meanRate(s);
      // The mean of a log-normal family mean.
      assertEquals(Math.exp(LOG_RATE + 0.5 * 0.5 / 2), mean, 1e-4 * mean);
      assertEquals(Gamma.trigamma(4), posterior.logVariance(s), 1e-7);
    }
  }

  @Test
  void roughIntegralsTakeFewerPoints() {
    RatePosterior fine = new RatePosterior(data(false), hyper(0.6, 3), true);
    RatePosterior rough = new RatePosterior(data(true), hyper(0.6, 3), true);
    for (int s = 0; s < 5; s++) {
      assertTrue(rough.nodes(s).count() < fine.nodes(s).count());
    }
    assertTrue(rough.family(0).count() < fine.family(0).count());
  }

  @Test
  void stylesWithoutDataAreWorkedOutOnlyWhenKept() {
    RatePosterior kept = new RatePosterior(data(false), hyper(0.6, 3), true);
    RatePosterior passed = new RatePosterior(data(false), hyper(0.6, 3), false);
    assertNull(passed.nodes(2));
    assertNull(passed.nodes(4));
    assertFalse(kept.nodes(2) == null || kept.nodes(4) == null);
  }

  private static final double UNIT = RateNodes.WIDEST / 32;

  /** The points of a style for family means near a lattice number. */
  private static RateNodes nodes(Observation seen, double shape, int mean) {
    StyleHistory.Likelihood likelihood =
        new StyleHistory(List.of(seen)).at(NO_EXTRA_VARIATION, new double[0], new LatticeShift[1]);
    return new RateNodes(likelihood, UNIT, 5, shape, (mean - 5) * UNIT, (mean + 5) * UNIT, false);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 37, -60})
  void dataAndFamilyMayBeFarApart(int lattice) {
    // The family's rates lie within 6 %, the style's data e^7 below: every product underflows.
    double shape = 300;
    double b = shape / Math.exp(lattice * UNIT);
    int y = 50;
    double t = 50 * Math.exp(7 - lattice * UNIT);
    RateNodes nodes = nodes(seen(0, t, y), shape, lattice);
    GammaKernel kernel = new GammaKernel(shape, UNIT);
    kernel.reach(nodes.first() - lattice);
    double exact =
        Gamma.logGamma(shape + y)
            - Gamma.logGamma(shape)
            - Gamma.logGamma(y + 1.0)
            + shape * Math.log(b / (b + t))
            + y * Math.log(t / (b + t));
    assertTrue(exact < -900, "far apart: " + exact);
    assertEquals(exact, nodes.logEvidence(kernel, lattice), 1e-7);
    double[] weights = new double[nodes.count() + 1];
    nodes.addWeights(kernel, lattice, 2, weights);
    double all = 0;
    double mean = 0;
    for (int i = 0; i < nodes.count(); i++) {
      all += weights[i];
      mean += weights[i] * nodes.rate(i);
    }
    assertEquals(2, all, 1e-9);
    assertEquals(2 * (shape + y) / (b + t), mean, 1e-8 * mean);
    assertEquals(LeftTail.NONE, nodes.tail());
    // No family mean of any weight lies so far away: nothing is to be had there.
    assertEquals(0, nodes.expectation(kernel, lattice, weights));
    assertEquals(0, nodes.logVariance(kernel, lattice));
  }

  // A weight of 0.02 leaves so little of a trip that the tail to the left counts.
  @ParameterizedTest
  @CsvSource({"0, 1", "3, 1", "60, 1", "1, 0.02", "4, 0.02"})
  void expectationsAreThoseOfTheGammaPosterior(int lost, double weight) {
    for (double shape : new double[] {0.1, 2, 50}) {
      double t = 7 * weight;
      double y = lost * weight;
      int lattice = 15;
      RateNodes nodes =
          nodes(new Observation(0, 0, 7, 1, Observation.MIX, lost, false, weight), shape, lattice);
      GammaKernel kernel = new GammaKernel(shape, UNIT);
      kernel.reach(nodes.first() - lattice);
      double b = shape / Math.exp(lattice * UNIT) + t;
      double[] rate = new double[nodes.count() + 1];
      double[] lasts = new double[nodes.count() + 1];
      for (int i = 0; i < rate.length; i++) {
        rate[i] = i < nodes.count() ? nodes.rate(i) : nodes.tail().rate();
        lasts[i] = Math.exp(-3 * rate[i]);
      }
      double mean = (shape + y) / b;
      assertEquals(mean, nodes.expectation(kernel, lattice, rate), 1e-7 * mean);
      double lasting = Math.pow(b / (b + 3), shape + y);
      assertEquals(lasting, nodes.expectation(kernel, lattice, lasts), 1e-7);
      double variance = Gamma.trigamma(shape + y);
      assertEquals(variance, nodes.logVariance(kernel, lattice), 1e-6 * variance);
    }
  }

  @Test
  void aFamilyWithoutDataIsItsPrior() {
    double spread = 0.7;
    double unit = 0.02;
    GammaKernel kernel = new GammaKernel(3, unit);
    // The middle of the range is not the peak: it is climbed to, from either side.
    for (double[] range : new double[][] {{-9, 9}, {-6, 14}, {-20, 4.9}}) {
      FamilyPosterior family =
          new FamilyPosterior(
              LOG_RATE,
              spread,
              1 / (spread * spread),
              false,
              LOG_RATE + range[0],
              LOG_RATE + range[1],
              kernel,
              List.of());
      List<Double> moments = new ArrayList<>(List.of(0.0, 0.0, 0.0));
      for (int i = 0; i < family.count(); i++) {
        double away = family.mean(i) * unit - LOG_RATE;
        for (int k = 0; k < 3; k++) {
          moments.set(k, moments.get(k) + family.weight(i) * Math.pow(away, k));
        }
      }
      assertEquals(1, moments.get(0), 1e-12);
      assertEquals(0, moments.get(1), 1e-8);
      assertEquals(spread * spread, moments.get(2), 1e-7);
      assertEquals(0, family.logEvidence(), 1e-8);
      assertFalse(family.cutLow() || family.cutHigh());
      // 0.9 standard deviations are as far apart as the points may lie.
      assertEquals((int) (0.9 * spread / unit), family.stride());
    }
    FamilyPosterior low =
        new FamilyPosterior(
            LOG_RATE, spread, 2, false, LOG_RATE - 1, LOG_RATE + 8, kernel, List.of());
    assertTrue(low.cutLow() && !low.cutHigh());
    FamilyPosterior high =
        new FamilyPosterior(
            LOG_RATE, spread, 2, true, LOG_RATE - 8, LOG_RATE + 1, kernel, List.of());
    assertTrue(high.cutHigh() && !high.cutLow());
  }
}
