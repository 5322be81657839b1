package sparewell.numerics;

import org.apache.commons.math3.special.Gamma;

/** ln n!, from a table for small n. */
final class LogFactorial {
  private static final double[] TABLE = new double[256];

  static {
    for (int n = 1; n < TABLE.length; n++) {
      TABLE[n] = TABLE[n - 1] + Math.log(n);
    }
  }

  private LogFactorial() {}

  /**
   * ln n!.
   *
   * @param n &ge; 0
   * @return accurate to about 1e-14 relative
   */
  static double of(int n) {
    return n < TABLE.length ? TABLE[n] : Gamma.logGamma(n + 1.0);
  }
}
