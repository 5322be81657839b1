package sparewell.numerics;

/**
 * Counts shared out: of n pieces each falls on an item with the same unknown chance, which is
 * Beta(a, b).
 *
 * @see "Johnson, Kemp, Kotz, Univariate Discrete Distributions, 3rd ed., sec. 6.2.2 (from memory)"
 */
public final class BetaBinomial {
  /** Largest count that {@link #thin} takes: e<sup>-1500/e</sup> is far above the least double. */
  public static final int MOST_THINNED = 1_500;

  private BetaBinomial() {}

  /**
   * The count of one item where the whole count is distributed as given: thinning as a finite sum.
   *
   * @param whole distribution of the whole count, of single pieces, at most {@link #MOST_THINNED}
   *     of them: no probability that counts is too small for a double on the way
   * @param a &gt; 0
   * @param b &ge; 0
   */
  public static CountDistribution thin(CountDistribution whole, double a, double b) {
    // Each row of probabilities from the one before: P(x | n) = P(x | n-1) n / (n-x) (b+n-1-x) /
    // (a+b+n-1). Products of positive numbers only.
    double[] each = whole.masses();
    double[] mass = new double[each.length];
    double[] given = new double[each.length];
    double[] rise = new double[each.length];
    for (int k = 1; k < each.length; k++) {
      rise[k] = (b + k - 1) / k;
    }
    given[0] = 1;
    mass[0] = each[0];
    for (int n = 1; n < each.length; n++) {
      double common = n / (a + b + n - 1);
      given[n] = given[n - 1] * (a + n - 1) / (a + b + n - 1);
      mass[n] += each[n] * given[n];
      for (int x = 0; x < n; x++) {
        given[x] *= common * rise[n - x];
        mass[x] += each[n] * given[x];
      }
    }
    return CountDistribution.of(mass, whole.mean() * a / (a + b));
  }
}
