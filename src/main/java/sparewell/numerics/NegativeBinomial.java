package sparewell.numerics;

import org.apache.commons.math3.special.Beta;

/**
 * The negative binomial distribution by mean m and size k, k not necessarily whole: variance m +
 * m&sup2;/k.
 *
 * <p>P(Y = y) = &Gamma;(y+k) / (&Gamma;(k) y!) &middot; (m/(k+m))<sup>y</sup> &middot;
 * (k/(k+m))<sup>k</sup>.
 *
 * @see "Johnson, Kemp, Kotz, Univariate Discrete Distributions, 3rd ed., ch. 5 (from memory)"
 */
public final class NegativeBinomial {
  private static final int VERY_MANY = 2_000; // and their factors not multiplied one by one
  private static final int MANY = 200; // counts above are not summed one by one

  private NegativeBinomial() {}

  /**
   * ln P(Y = y), accurate to about 1e-13 of its largest term.
   *
   * @param y count, &ge; 0
   * @param mean m, &ge; 0
   * @param size k, &gt; 0
   */
  public static double logPmf(int y, double mean, double size) {
    double power = y > 0 ? y * Math.log(mean) : 0;
    return logCoefficient(y, size) + power - (y + size) * Math.log1p(mean / size);
  }

  /**
   * The part of ln P(Y = y) that does not depend on the mean: ln of &Gamma;(k+y) / (&Gamma;(k)
   * k<sup>y</sup> y!), up to 2,000 as a product of y factors, so that a large size loses no digits.
   *
   * @param y &ge; 0
   * @param size k, &gt; 0
   */
  public static double logCoefficient(int y, double size) {
    if (y > VERY_MANY) {
      return -Beta.logBeta(size, y) - Math.log(y) - y * Math.log(size);
    }
    double sum = 0;
    double product = 1;
    for (int j = 0; j < y; j++) {
      product *= (1 + j / size) / (j + 1);
      if (product > 1e200 || product < 1e-200) {
        sum += Math.log(product);
        product = 1;
      }
    }
    return sum + Math.log(product);
  }

  /**
   * ln P(Y &ge; y), without cancellation in either tail.
   *
   * @param y &ge; 0
   * @param mean m, &gt; 0
   * @param size k, &ge; 0.001
   */
  public static double logAtLeast(int y, double mean, double size) {
    double share = mean / (size + mean);
    if (y > MANY) {
      double chance = Beta.regularizedBeta(share, y, size);
      if (chance > 1e-290) {
        return Math.log(chance);
      }
    } else {
      double mass = Math.exp(-size * Math.log1p(mean / size));
      double below = 0;
      for (int j = 0; j < y; j++) {
        below += mass;
        mass *= (size + j) * share / (j + 1);
      }
      if (below < 0.99) {
        return Math.log1p(-below);
      }
    }
    double term = 1;
    double sum = 1;
    for (int j = y; term > 1e-17 * sum; j++) {
      term *= (size + j) * share / (j + 1);
      sum += term;
    }
    return Math.min(0, logPmf(y, mean, size) + Math.log(sum));
  }
}
