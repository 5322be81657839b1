package sparewell.numerics;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Exact interval for the mean of a Poisson count, in the chi-square form.
 *
 * @param low lower end, 0 for a count of 0
 * @param high upper end
 * @see "Garwood, Fiducial limits for the Poisson distribution, Biometrika 28 (1936)"
 */
public record PoissonInterval(double low, double high) {
  /**
   * Of a count.
   *
   * @param count &ge; 0
   * @param level wanted coverage, in (0, 1)
   * @return accurate to about 1e-9
   */
  public static PoissonInterval of(int count, double level) {
    if (count < 0 || !(level > 0 && level < 1)) {
      throw new IllegalArgumentException("count " + count + ", level " + level);
    }
    double tail = (1 - level) / 2;
    double low = count == 0 ? 0 : chiSquare(2.0 * count, tail) / 2;
    return new PoissonInterval(low, chiSquare(2.0 * count + 2, 1 - tail) / 2);
  }

  private static double chiSquare(double degrees, double probability) {
    return new ChiSquaredDistribution(null, degrees, 1e-12)
        .inverseCumulativeProbability(probability);
  }
}
