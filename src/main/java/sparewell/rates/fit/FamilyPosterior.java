package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;

/**
 * The mean rate of one family as weighted points, for given hyperparameters.
 *
 * <p>The log posterior of the log mean is concave and analytic, so the trapezoidal rule from its
 * peak outward integrates it. Points lie on the lattice of the rates.
 */
final class FamilyPosterior {
  /** How many prior standard deviations from the prior mean a family mean is looked for. */
  static final double REACH = 4.5;

  private static final double DEPTH = 20;
  private static final double ROUGH_DEPTH = 12;

  private final int first;
  private final int stride;
  private final double[] weight;
  private final double logEvidence;
  private final boolean cutLow;
  private final boolean cutHigh;

  /** Widest step that integrates right. */
  static double step(double precision, boolean rough) {
    return (rough ? 1.1 : 0.9) / Math.sqrt(precision);
  }

  /**
   * Integrates.
   *
   * @param centre prior mean of the family's log mean rate
   * @param spread prior standard deviation of that
   * @param precision most that the posterior precision can be
   * @param rough whether 1e-4 will do
   * @param low least log mean to look at
   * @param high largest
   * @param styles the styles of the family that have data
   */
  FamilyPosterior(
      double centre,
      double spread,
      double precision,
      boolean rough,
      double low,
      double high,
      GammaKernel kernel,
      List<RateNodes> styles) {
    double unit = kernel.unit();
    double depth = rough ? ROUGH_DEPTH : DEPTH;
    stride = Math.max(1, (int) (step(precision, rough) / unit + 1e-9));
    int least = (int) Math.ceil(low / unit);
    int most = Math.max(least, (int) Math.floor(high / unit));
    int steps = (most - least) / stride;
    for (RateNodes style : styles) {
      kernel.reach(style.first() - most);
    }
    double[] value = new double[steps + 1];
    Arrays.fill(value, Double.NaN);
    int top = steps / 2;
    double best = at(value, top, least, centre, spread, kernel, styles);
    for (int direction = 1; direction >= -1; direction -= 2) {
      while (top + direction >= 0 && top + direction <= steps) {
        double next = at(value, top + direction, least, centre, spread, kernel, styles);
        if (!(next > best)) {
          break;
        }
        best = next;
        top += direction;
      }
    }
    int from = top;
    while (from > 0 && at(value, from - 1, least, centre, spread, kernel, styles) > best - depth) {
      from--;
    }
    int to = top;
    while (to < steps && at(value, to + 1, least, centre, spread, kernel, styles) > best - depth) {
      to++;
    }
    cutLow = from == 0;
    cutHigh = to == steps;
    first = least + from * stride;
    weight = new double[to - from + 1];
    double sum = 0;
    for (int i = 0; i < weight.length; i++) {
      weight[i] = Math.exp(value[from + i] - best);
      sum += weight[i];
    }
    for (int i = 0; i < weight.length; i++) {
      weight[i] /= sum;
    }
    logEvidence = best + Math.log(sum * stride * unit / (spread * Math.sqrt(2 * Math.PI)));
  }

  private double at(
      double[] value,
      int i,
      int least,
      double centre,
      double spread,
      GammaKernel kernel,
      List<RateNodes> styles) {
    if (Double.isNaN(value[i])) {
      int mean = least + i * stride;
      double away = (mean * kernel.unit() - centre) / spread;
      double sum = -away * away / 2;
      for (RateNodes style : styles) {
        sum += style.logEvidence(kernel, mean);
      }
      value[i] = sum;
    }
    return value[i];
  }

  int count() {
    return weight.length;
  }

  /** Lattice number of a point. */
  int mean(int i) {
    return first + i * stride;
  }

  double weight(int i) {
    return weight[i];
  }

  /** Distance of the points in the lattice. */
  int stride() {
    return stride;
  }

  /** Whether there may be weight below the least mean looked at. */
  boolean cutLow() {
    return cutLow;
  }

  /** Whether there may be weight above the largest. */
  boolean cutHigh() {
    return cutHigh;
  }

  /** ln of the chance of all the family's data. */
  double logEvidence() {
    return logEvidence;
  }
}
