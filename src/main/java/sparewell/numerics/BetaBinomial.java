package sparewell.numerics;

import java.util.List;

/**
 * Counts shared out: of n pieces each falls on an item with the same unknown chance, which is
 * Beta(a, b); and its relative of several items, the Dirichlet-multinomial.
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

  /**
   * P(no item gets more than its limit) for 0, 1, ..., largest pieces, where the items share as
   * Dirichlet.
   *
   * @param weights Dirichlet parameters of the items with a limit, each &gt; 0
   * @param limits their limits, each &ge; 0
   * @param rest sum of the parameters of the items without a limit, &ge; 0
   * @param largest largest number of pieces asked for, at most 1,000
   */
  public static double[] withinLimits(
      List<Double> weights, List<Integer> limits, double rest, int largest) {
    // Dirichlet-multinomial = independent negative binomials given their sum, whatever chance p
    // they share: here one with which the sums in question are likely, so that none of their
    // chances is too small for a double.
    double all = rest + weights.stream().mapToDouble(weight -> weight).sum();
    double p = 1 / (1 + all / Math.max(1, largest / 2.0));
    double[] held = negativeBinomial(rest, p, largest);
    for (int i = 0; i < weights.size(); i++) {
      held = convolve(held, negativeBinomial(weights.get(i), p, Math.min(limits.get(i), largest)));
    }
    double[] whole = negativeBinomial(all, p, largest);
    for (int n = 0; n <= largest; n++) {
      held[n] = Math.min(1, held[n] / whole[n]);
    }
    return held;
  }

  private static double[] negativeBinomial(double size, double p, int most) {
    double[] values = new double[most + 1];
    values[0] = Math.exp(size * Math.log1p(-p));
    for (int n = 1; n <= most; n++) {
      values[n] = values[n - 1] * p * (size + n - 1) / n;
    }
    return values;
  }

  private static double[] convolve(double[] full, double[] part) {
    double[] out = new double[full.length];
    for (int i = 0; i < full.length; i++) {
      if (full[i] != 0) {
        for (int j = 0; j < part.length && i + j < out.length; j++) {
          out[i + j] += full[i] * part[j];
        }
      }
    }
    return out;
  }
}
