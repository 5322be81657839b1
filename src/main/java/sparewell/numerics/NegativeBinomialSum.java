package sparewell.numerics;

/**
 * A sum of independent negative binomial counts: the probabilities of 0, 1, 2, ... one after the
 * other.
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

  private final double[] share;
  private final double[] size;
  private final double[] flow;
  private double f; // probability of the count reached
  private double pending; // ln of what it is still to be multiplied with
  private int n = -1;

  /**
   * In bundles of several pieces, the sum counts as one negative binomial of its mean and variance,
   * less the variance that whole bundles add to it.
   *
   * @param means mean of each term, &ge; 0
   * @param sizes size of each term, &gt; 0
   * @param bundle pieces in a bundle, &ge; 1
   */
  public NegativeBinomialSum(double[] means, double[] sizes, int bundle) {
    if (bundle == 1) {
      share = means.clone();
      size = sizes;
    } else {
      double mean = mean(means);
      double spread = 1 / wholeSize(means, sizes) - (bundle - 1) / Math.max(mean, 1e-12);
      share = new double[] {mean / bundle};
      size = new double[] {1 / Math.max(spread, 1e-12)};
    }
    flow = new double[share.length];
    double logZero = 0;
    for (int e = 0; e < share.length; e++) {
      logZero -= size[e] * Math.log1p(share[e] / size[e]);
      share[e] /= size[e] + share[e];
    }
    pending = Math.min(0, logZero - FLOOR);
    f = Math.exp(Math.max(logZero, FLOOR));
  }

  /** P(N = 0), then that of 1, and so on. */
  public double next() {
    n++;
    if (n > 0) {
      double sum = 0;
      for (int e = 0; e < share.length; e++) {
        flow[e] = share[e] * (flow[e] + size[e] * f);
        sum += flow[e];
      }
      f = sum / n;
    }
    if (pending == 0) {
      return f;
    }
    if (f > RESCALE) {
      rescale(Math.max(RESCALE_LOG, pending));
    }
    return f * Math.exp(pending);
  }

  private void rescale(double log) {
    double by = Math.exp(log);
    f *= by;
    for (int e = 0; e < flow.length; e++) {
      flow[e] *= by;
    }
    pending -= log;
  }

  /** Mean of the sum. */
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
