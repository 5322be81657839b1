package sparewell.rates.fit;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Estimate and credible interval of a positive quantity, in its unit.
 *
 * @param mean posterior mean
 * @param low90 5 % point
 * @param high90 95 % point
 */
public record Estimate(double mean, double low90, double high90) {
  /** Estimate of a quantity whose logarithm has weights on a grid. */
  static Estimate ofGrid(double mean, double[] weights, int first, double step, double power) {
    return new Estimate(
        mean,
        Math.exp(quantile(weights, first, step, power, 0.05)),
        Math.exp(quantile(weights, first, step, power, 0.95)));
  }

  /**
   * Where the running sum of the weights passes a part of their total. A point's weight lies half a
   * step to either side of it, with a density that changes linearly, by the difference of its
   * neighbours. The first point that holds weight stands for all to its left as well, where weights
   * fall by e<sup>-power</sup> for each unit of the logarithm.
   */
  private static double quantile(
      double[] weights, int first, double step, double power, double part) {
    double left = part * IntStream.range(0, weights.length).mapToDouble(i -> weights[i]).sum();
    int i = 0;
    while (i < weights.length - 1 && left >= weights[i]) {
      left -= weights[i++];
    }
    double here = weights[i];
    double share = here > 0 ? left / here : 0.5;
    double before = i > 0 ? weights[i - 1] : 0;
    double after = i < weights.length - 1 ? weights[i + 1] : 0;
    if (before < here / 50) {
      return (first + i + 0.5) * step + Math.log(Math.max(share, 1e-12)) / power;
    }
    // Density 1 + tilt t at t from -1/2 to 1/2 around the point: tilt (t^2 - 1/4) / 2 + t + 1/2.
    double tilt = Math.max(-1, Math.min(1, (after - before) / 2 / here));
    double t = share - 0.5;
    for (int k = 0; k < 4; k++) {
      t = share - 0.5 - tilt * (t * t - 0.25) / 2;
    }
    return (first + i + t) * step;
  }

  /** Estimate of a quantity given by weighted draws: between two draws the distribution is even. */
  static Estimate ofDraws(double[] values, double[] weights) {
    int[] order =
        IntStream.range(0, values.length)
            .boxed()
            .sorted(Comparator.comparingDouble(d -> values[d]))
            .mapToInt(Integer::intValue)
            .toArray();
    double mean = IntStream.of(order).mapToDouble(d -> values[d] * weights[d]).sum();
    return new Estimate(
        mean, quantile(order, values, weights, 0.05), quantile(order, values, weights, 0.95));
  }

  private static double quantile(int[] order, double[] values, double[] weights, double part) {
    double passed = weights[order[0]] / 2; // up to the middle of a draw's weight
    int i = 0;
    while (i < order.length - 1) {
      double more = (weights[order[i]] + weights[order[i + 1]]) / 2;
      if (passed + more > part) {
        double share = Math.max(0, (part - passed) / more);
        return values[order[i]] + share * (values[order[i + 1]] - values[order[i]]);
      }
      passed += more;
      i++;
    }
    return values[order[i]];
  }
}
