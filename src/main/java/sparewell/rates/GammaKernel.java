package sparewell.rates;

import org.apache.commons.math3.special.Gamma;

/**
 * The density of a log rate x around the log m of its family's mean, on a lattice: exp(a u - a
 * e<sup>u</sup> + a) with u = x - m, so that its peak is 1.
 */
final class GammaKernel {
  private static final double BEYOND = 8; // e^-a e^8 is 0 for all shapes in range

  private final double shape;
  private final double unit;
  private final int lowest;
  private final double[] density;
  private final double logNorm;

  /**
   * Computes the table.
   *
   * @param lowest least lattice number of u that will be asked for
   * @param highest largest; beyond about u = 8 the density counts as 0
   */
  GammaKernel(double shape, double unit, int lowest, int highest) {
    this.shape = shape;
    this.unit = unit;
    this.lowest = lowest;
    this.logNorm = shape * Math.log(shape) - Gamma.logGamma(shape) - shape;
    int top = Math.max(lowest + 1, Math.min(highest, (int) (BEYOND / unit)));
    density = new double[top - lowest + 1];
    double grow = Math.exp(unit);
    double e = Math.exp(lowest * unit);
    for (int k = 0; k < density.length; k++) {
      double u = (lowest + k) * unit;
      density[k] = Math.exp(shape * (u - e + 1));
      e *= grow;
    }
  }

  double[] density() {
    return density;
  }

  /** Place in the table of a point. */
  int index(int mean, int point) {
    return point - mean - lowest;
  }

  /** Number of points, from the given first, that lie in the table. */
  int end(int mean, int first, int stride) {
    int k = index(mean, first);
    return k >= density.length ? 0 : (density.length - 1 - k) / stride + 1;
  }

  /** How strongly the density falls with the rate itself: a / family mean. */
  double pull(int mean) {
    return shape * Math.exp(-mean * unit);
  }

  /** ln of what the table must be multiplied with to be a density. */
  double logNorm() {
    return logNorm;
  }

  double unit() {
    return unit;
  }
}
