package sparewell.rates;

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

  private final int first;
  private final int stride;
  private final double[] weight;
  private final double logEvidence;

  /**
   * Integrates.
   *
   * @param centre prior mean of the family's log mean rate
   * @param spread its prior standard deviation
   * @param precision most that the posterior precision can be
   * @param styles the styles of the family that have data
   */
  FamilyPosterior(
      double centre, double spread, double precision, GammaKernel kernel, List<RateNodes> styles) {
    double unit = kernel.unit();
    stride = Math.max(1, (int) (0.9 / Math.sqrt(precision) / unit));
    int least = (int) Math.ceil((centre - REACH * spread) / unit);
    int most = Math.max(least, (int) Math.floor((centre + REACH * spread) / unit));
    int steps = (most - least) / stride;
    double[] value = new double[steps + 1];
    Arrays.fill(value, Double.NaN);
    int top = steps / 2;
    double[] prior = {centre, 1 / (2 * spread * spread)};
    double best = at(value, top, least, unit, prior, kernel, styles);
    for (int direction = 1; direction >= -1; direction -= 2) {
      while (top + direction >= 0 && top + direction <= steps) {
        double next = at(value, top + direction, least, unit, prior, kernel, styles);
        if (!(next > best)) {
          break;
        }
        best = next;
        top += direction;
      }
    }
    int low = top;
    while (low > 0 && at(value, low - 1, least, unit, prior, kernel, styles) > best - DEPTH) {
      low--;
    }
    int high = top;
    while (high < steps && at(value, high + 1, least, unit, prior, kernel, styles) > best - DEPTH) {
      high++;
    }
    first = least + low * stride;
    weight = new double[high - low + 1];
    double sum = 0;
    for (int i = 0; i < weight.length; i++) {
      weight[i] = Math.exp(value[low + i] - best);
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
      double unit,
      double[] prior,
      GammaKernel kernel,
      List<RateNodes> styles) {
    if (Double.isNaN(value[i])) {
      int mean = least + i * stride;
      double away = mean * unit - prior[0];
      double sum = -away * away * prior[1];
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

  /** ln of the chance of all the family's data. */
  double logEvidence() {
    return logEvidence;
  }
}
