package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where the points of a rate lie: far enough on either side, and no farther. */
class RateRangeTest {
  private static final double UNIT = RateNodes.WIDEST / 64;

  @Test
  void stepsFollowTheNarrowestPosterior() {
    assertEquals(0.32, RateNodes.step(1, false));
    assertEquals(0.064, RateNodes.step(100, false), 1e-15);
    assertEquals(0.1, RateNodes.step(100, true), 1e-15);
    assertEquals(0.45, FamilyPosterior.step(4, false), 1e-15);
    assertEquals(0.55, FamilyPosterior.step(4, true), 1e-15);
  }

  // Weak and strong shapes, few and many pieces, family means in a narrow and a wide range.
  @ParameterizedTest
  @CsvSource({
    "0.1, 0, 3, -2, -2",
    "0.1, 0, 3000, -9, 3",
    "0.5, 0, 0.01, -2, 1",
    "2, 0, 40, -4, 1",
    "2, 3, 40, -4, 1",
    "30, 9, 2, -6, 2",
    "300, 200, 0.5, 1, 1.5",
    "1, 60, 9000, -12, 6"
  })
  void endsWhereNothingIsLeft(double shape, int lost, double hours, double low, double high) {
    StyleHistory.Likelihood likelihood =
        new StyleHistory(List.of(new Observation(0, 0, hours, 1, Observation.MIX, lost, false, 1)))
            .at(1.5, new double[0], new LatticeShift[1]);
    for (boolean rough : new boolean[] {false, true}) {
      RateRange range = new RateRange(likelihood, UNIT, 6, shape, low, high, rough);
      int n = range.rate().length;
      // As wide as may be, in whole steps of the lattice.
      double widest = RateNodes.step(shape + likelihood.pieces, rough);
      assertTrue(range.step() <= widest + 1e-12 && range.step() + UNIT > widest);
      assertEquals(range.stride() * UNIT, range.step(), 1e-15);
      for (int i = 0; i < n; i++) {
        double x = range.first() * UNIT + i * range.step();
        assertEquals(Math.exp(x), range.rate()[i], 1e-9 * range.rate()[i]);
        assertEquals(likelihood.at(x, Math.exp(x)), range.logLikelihood()[i], 1e-7);
      }
      double depth = rough ? 12 : 21;
      double[] right = depths(likelihood, range, shape, high);
      assertTrue(right[n] <= depth && right[n + 1] > depth, "right " + right[n]);
      double[] left = depths(likelihood, range, shape, low);
      if (range.flat()) {
        // The rate times hours, and over the family's mean, is as good as nothing.
        double flat = range.rate()[0] * (likelihood.exposure + shape * Math.exp(-low));
        assertTrue(flat <= 2e-5 && flat > 2e-6, "flat " + flat);
      } else {
        // One more than needed.
        assertTrue(left[1] > depth && left[2] <= depth, "left " + left[1] + " " + left[2]);
      }
    }
  }

  /** How far ln of the integrand lies below its peak, from one point before to one behind. */
  private static double[] depths(
      StyleHistory.Likelihood likelihood, RateRange range, double shape, double logMean) {
    double[] value = new double[range.rate().length + 2];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < value.length; i++) {
      double x = range.first() * UNIT + (i - 1) * range.step();
      value[i] = likelihood.at(x, Math.exp(x)) + shape * x - shape * Math.exp(x - logMean);
      best = Math.max(best, value[i]);
    }
    for (int i = 0; i < value.length; i++) {
      value[i] = best - value[i];
    }
    return value;
  }

  @Test
  void theTailIsASeries() {
    // Terms q, q^2, ... of the first, at log rates one step after the other to the left.
    double step = 0.3;
    double power = 0.4;
    double first = 1e-6;
    LeftTail tail = LeftTail.of(first, step, power, 7);
    double weight = 0;
    double rate = 0;
    double logRate = 0;
    double square = 0;
    for (int k = 1; k < 400; k++) {
      double term = Math.exp(-power * step * k);
      double x = Math.log(first) - k * step;
      weight += term;
      rate += term * Math.exp(x);
      logRate += term * x;
      square += term * x * x;
    }
    assertEquals(rate / weight, tail.rate(), 1e-12 * first);
    assertEquals(logRate / weight, tail.logRate(), 1e-9);
    double mean = logRate / weight;
    assertEquals(square / weight - mean * mean, tail.logVariance(), 1e-7);
    // The likelihood grows by exposure times rate towards 0.
    assertEquals(weight * (1 + 7 * (first - rate / weight)), tail.weight(), 1e-12);
  }
}
