package sparewell.numerics;

import java.util.Arrays;

/**
 * Probabilities of a sum of independent negative binomial counts.
 *
 * <p>Of terms e with mean m<sub>e</sub> and size r<sub>e</sub>, p<sub>e</sub> =
 * m<sub>e</sub>/(r<sub>e</sub>+m<sub>e</sub>), the sum has probabilities with n f(n) =
 * &sum;<sub>e</sub> s<sub>e</sub>(n), s<sub>e</sub>(n) = p<sub>e</sub> (s<sub>e</sub>(n-1) +
 * r<sub>e</sub> f(n-1)), which is the derivative of the generating function read term by term. No
 * subtraction, so no cancellation.
 *
 * @see "Panjer, Recursive evaluation of a family of compound distributions, ASTIN 12 (1981), the
 *     same device (from memory)"
 */
public final class NegativeBinomialSum {
  private static final double FLOOR = -600; // e^-600 is still a number
  private static final double RESCALE = 1e100;
  private static final double RESCALE_LOG = -230;

  private NegativeBinomialSum() {}

  /**
   * P(N = 0), P(N = 1), ..., as far as is asked for, perhaps with zeros behind.
   *
   * <p>In bundles of several pieces, the sum counts as one negative binomial of its mean and
   * variance, less the variance that whole bundles add to it.
   *
   * @param means mean of each term, &ge; 0
   * @param sizes size of each term, &gt; 0
   * @param bundle pieces in a bundle, &ge; 1
   * @param most how many probabilities at most, &gt; 0
   * @param tail probability that may be left out
   */
  public static double[] probabilities(
      double[] means, double[] sizes, int bundle, int most, double tail) {
    if (bundle > 1) {
      double mean = mean(means);
      double spread = 1 / wholeSize(means, sizes) - (bundle - 1) / Math.max(mean, 1e-12);
      double[] size = {1 / Math.max(spread, 1e-12)};
      return probabilities(new double[] {mean / bundle}, size, 1, most, tail);
    }
    double[] share = new double[means.length];
    double[] flow = new double[means.length];
    double logZero = 0;
    for (int e = 0; e < share.length; e++) {
      logZero -= sizes[e] * Math.log1p(means[e] / sizes[e]);
      share[e] = means[e] / (sizes[e] + means[e]);
    }
    double f = Math.exp(Math.max(logZero, FLOOR));
    double pending = Math.min(0, logZero - FLOOR); // ln of what f is still to be multiplied with
    double[] chances = new double[Math.min(most, 32)];
    double left = 1;
    for (int n = 0; n < most && left > tail; n++) {
      if (n > 0) {
        double sum = 0;
        for (int e = 0; e < share.length; e++) {
          flow[e] = share[e] * (flow[e] + sizes[e] * f);
          sum += flow[e];
        }
        f = sum / n;
      }
      if (pending < 0 && f > RESCALE) {
        double by = Math.max(RESCALE_LOG, pending);
        f *= Math.exp(by);
        for (int e = 0; e < flow.length; e++) {
          flow[e] *= Math.exp(by);
        }
        pending -= by;
      }
      if (n == chances.length) {
        chances = Arrays.copyOf(chances, Math.min(most, 2 * n));
      }
      chances[n] = pending < 0 ? f * Math.exp(pending) : f;
      left -= chances[n];
    }
    return chances;
  }

  static double mean(double[] means) {
    double sum = 0;
    for (double mean : means) {
      sum += mean;
    }
    return sum;
  }

  /** Size of one negative binomial with the mean and the variance of the sum. */
  static double wholeSize(double[] means, double[] sizes) {
    double extra = 0;
    for (int e = 0; e < means.length; e++) {
      extra += means[e] / sizes[e] * means[e];
    }
    double mean = mean(means);
    double square = mean * mean;
    return square > 0 ? square / Math.max(extra, 1e-12 * square) : 1e12; // of nothing: any
  }
}
