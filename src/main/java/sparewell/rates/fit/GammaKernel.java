package sparewell.rates.fit;

import org.apache.commons.math3.special.Gamma;

/**
 * The density of a log rate x around the log m of its family's mean, on a lattice: exp(a u - a
 * e<sup>u</sup> + a) with u = x - m, so that its peak is 1.
 */
final class GammaKernel {
  private static final double VANISHED = 700; // e^-700 is left out

  private final double shape;
  private final double unit;
  private final double logNorm;
  private final int highest;
  private int lowest;
  private double[] density;

  /**
   * Computes the table from the family's mean up to where the density has vanished.
   *
   * @param shape a, &gt; 0
   * @param unit step of the lattice, in log rate
   */
  GammaKernel(double shape, double unit) {
    this.shape = shape;
    this.unit = unit;
    logNorm = shape * Math.log(shape) - Gamma.logGamma(shape) - shape;
    double end = 0;
    for (int i = 0; i < 8; i++) {
      end = Math.log1p(end + VANISHED / shape);
    }
    highest = (int) (end / unit);
    lowest = highest + 1;
    density = new double[0];
    reach(0);
  }

  /** Sees to it that the table reaches down to a lattice number of u. */
  void reach(int least) {
    if (least >= lowest) {
      return;
    }
    double[] table = new double[highest - least + 1];
    int fresh = lowest - least;
    System.arraycopy(density, 0, table, fresh, density.length);
    double grow = Math.exp(unit);
    double e = Math.exp(least * unit);
    for (int k = 0; k < fresh; k++) {
      double u = (least + k) * unit;
      table[k] = Math.exp(shape * (u - e + 1));
      e *= grow;
    }
    lowest = least;
    density = table;
  }

  /** The table, by place. */
  double[] density() {
    return density;
  }

  /** ln of the density at a lattice number of u. */
  double logDensity(int number) {
    double u = number * unit;
    return shape * (u - Math.exp(u) + 1);
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

  /** Step of the lattice, in log rate. */
  double unit() {
    return unit;
  }
}
