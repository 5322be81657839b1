package sparewell.numerics;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Gamma;

/**
 * The negative binomial distribution by mean m and size k, k not necessarily whole: variance m +
 * m&sup2;/k; k &rarr; &infin; is Poisson.
 *
 * <p>P(Y = y) = &Gamma;(y+k) / (&Gamma;(k) y!) &middot; (m/(k+m))<sup>y</sup> &middot;
 * (k/(k+m))<sup>k</sup>. The gamma functions are never subtracted from each other: their quotient
 * is a product of y factors, so that a large size loses no digits.
 *
 * @see "Johnson, Kemp, Kotz, Univariate Discrete Distributions, 3rd ed., ch. 5 (from memory)"
 */
public final class NegativeBinomial {
  private static final int VERY_MANY = 2_000; // and their factors not multiplied one by one
  private static final int MANY = 200; // counts above are not summed one by one

  private static final int SLOW = 50; // sizes in a mean, from which terms fall by under 2 %

  private NegativeBinomial() {}

  /**
   * ln P(Y = y).
   *
   * @param y count, &ge; 0
   * @param mean m, &ge; 0
   * @param size k, &gt; 0; may be infinite
   * @return accurate to about 1e-14 relative to its largest term; minus infinity where impossible
   */
  public static double logPmf(int y, double mean, double size) {
    require(mean, size);
    if (y < 0) {
      return Double.NEGATIVE_INFINITY;
    }
    if (mean == 0) {
      return y == 0 ? 0 : Double.NEGATIVE_INFINITY;
    }
    if (Double.isInfinite(size)) {
      return y * Math.log(mean) - mean - LogFactorial.of(y);
    }
    return logCoefficient(y, size) + y * Math.log(mean) - (y + size) * Math.log1p(mean / size);
  }

  /**
   * The part of ln P(Y = y) that does not depend on the mean: ln of &Gamma;(k+y) / (&Gamma;(k)
   * k<sup>y</sup> y!).
   *
   * @param y &ge; 0
   * @param size k, &gt; 0
   */
  public static double logCoefficient(int y, double size) {
    return risingLog(y, size) - LogFactorial.of(y);
  }

  /** P(Y = y). */
  public static double pmf(int y, double mean, double size) {
    return Math.exp(logPmf(y, mean, size));
  }

  /**
   * ln of &Gamma;(k+y) / (&Gamma;(k) k<sup>y</sup>), the sum of ln(1 + j/k) for j below y.
   *
   * @param y &ge; 0
   * @param size k, &gt; 0
   */
  static double risingLog(int y, double size) {
    if (y > VERY_MANY) {
      return Gamma.logGamma(size + y) - Gamma.logGamma(size) - y * Math.log(size);
    }
    double sum = 0;
    double product = 1;
    for (int j = 1; j < y; j++) {
      double step = j / size;
      if (step < 1e-4) {
        sum += Math.log1p(step);
      } else {
        product *= 1 + step;
        if (product > 1e200) {
          sum += Math.log(product);
          product = 1;
        }
      }
    }
    return sum + Math.log(product);
  }

  /**
   * ln P(Y &ge; y), without cancellation in either tail.
   *
   * @param y &ge; 0
   * @param mean m, &gt; 0
   * @param size k, &gt; 0
   */
  public static double logAtLeast(int y, double mean, double size) {
    require(mean, size);
    if (y <= 0) {
      return 0;
    }
    if (mean == 0) {
      return Double.NEGATIVE_INFINITY;
    }
    double share = Double.isInfinite(size) ? 0 : mean / (size + mean);
    if (y > MANY) {
      double chance =
          Double.isInfinite(size)
              ? Gamma.regularizedGammaP(y, mean)
              : Beta.regularizedBeta(share, y, size);
      // Far out, terms fall about geometrically from the first on.
      double fall = Math.min(0.999, Double.isInfinite(size) ? mean / y : (size + y) * share / y);
      double far = logPmf(y, mean, size) - Math.log1p(-fall);
      return Math.min(0, chance > 1e-290 ? Math.log(chance) : far);
    }
    double zero = Double.isInfinite(size) ? -mean : -size * Math.log1p(mean / size);
    if (mean >= y) {
      double mass = Math.exp(zero);
      double below = mass;
      for (int j = 1; j < y; j++) {
        mass *= (Double.isInfinite(size) ? mean : (size + (j - 1)) * share) / j;
        below += mass;
      }
      if (below < 0.99) {
        return Math.log1p(-below);
      }
    }
    if (SLOW * size < mean) {
      // The terms of the sum below would fall slowly: those from 1 on less those before y, of
      // which at least a thousandth is left.
      double mass = Math.exp(zero);
      double above = -Math.expm1(zero);
      for (int j = 1; j < y; j++) {
        mass *= (size + (j - 1)) * share / j;
        above -= mass;
      }
      return Math.log(above);
    }
    double term = 1;
    double sum = 1;
    for (int j = y; term > 1e-17 * sum; j++) {
      double growth = Double.isInfinite(size) ? mean : (size + j) * share;
      term *= growth / (j + 1);
      sum += term;
    }
    return Math.min(0, logPmf(y, mean, size) + Math.log(sum));
  }

  private static void require(double mean, double size) {
    if (!(mean >= 0) || !(size > 0) || Double.isInfinite(mean)) {
      throw new IllegalArgumentException("mean " + mean + ", size " + size);
    }
  }
}
