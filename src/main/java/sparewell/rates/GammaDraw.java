package sparewell.rates;

import java.util.random.RandomGenerator;

/**
 * Gamma numbers of ever changing shape. The library's distribution prepares a density that draws do
 * not need, which took most of the time.
 */
final class GammaDraw {
  private GammaDraw() {}

  /** A Gamma number of mean 1. */
  static double mean1(double shape, RandomGenerator random) {
    return Math.exp(log(shape, random)) / shape;
  }

  /** ln of a Gamma(shape, scale 1) number, which may itself be too small for a double. */
  static double log(double shape, RandomGenerator random) {
    double more = atLeast1(shape + 1, random);
    return Math.log(more) + Math.log(1 - random.nextDouble()) / shape;
  }

  /**
   * A Gamma(shape, scale 1) number by the method of Marsaglia and Tsang (2000), A simple method for
   * generating gamma variables, ACM Transactions on Mathematical Software 26, 363-372.
   *
   * @param shape &ge; 1
   */
  static double atLeast1(double shape, RandomGenerator random) {
    double d = shape - 1 / 3.0;
    double c = 1 / (3 * Math.sqrt(d));
    while (true) {
      double x = random.nextGaussian();
      double root = 1 + c * x;
      double v = root * root * root;
      if (v > 0) {
        double u = random.nextDouble();
        if (u < 1 - 0.0331 * x * x * x * x
            || Math.log(u) < 0.5 * x * x + d * (1 - v + Math.log(v))) {
          return d * v;
        }
      }
    }
  }
}
