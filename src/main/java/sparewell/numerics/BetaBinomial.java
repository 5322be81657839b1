package sparewell.numerics;

import java.util.List;

/**
 * Counts shared out: of n pieces each falls on an item with the same unknown chance, which is
 * Beta(a, b); and its relative of several items, the Dirichlet-multinomial.
 *
 * @see "Johnson, Kemp, Kotz, Univariate Discrete Distributions, 3rd ed., sec. 6.2.2 (from memory)"
 */
public final class BetaBinomial {
  /** Up to so many pieces no probability that counts can underflow on the way. */
  private static final int STEPWISE = 1000;

  private BetaBinomial() {}

  /**
   * P(X = 0), ..., P(X = n) for n pieces.
   *
   * @param n &ge; 0
   * @param a &gt; 0
   * @param b &ge; 0; 0 means that all pieces fall on the item
   * @return n+1 probabilities, accurate to about 1e-13
   */
  public static double[] pmf(int n, double a, double b) {
    if (n < 0 || !(a > 0) || !(b >= 0)) {
      throw new IllegalArgumentException("n " + n + ", a " + a + ", b " + b);
    }
    double[] mass = new double[n + 1];
    if (b == 0) {
      mass[n] = 1;
      return mass;
    }
    // Ratios of neighbours, started where the mass is, so that nothing under- or overflows.
    int start = (int) Math.min(n, Math.max(0, Math.floor(n * a / (a + b))));
    mass[start] = 1;
    double sum = 1;
    for (int x = start; x < n; x++) {
      mass[x + 1] = mass[x] * (n - x) / (x + 1.0) * (a + x) / (b + n - x - 1);
      sum += mass[x + 1];
    }
    for (int x = start; x > 0; x--) {
      mass[x - 1] = mass[x] * x / (n - x + 1.0) * (b + n - x) / (a + x - 1);
      sum += mass[x - 1];
    }
    for (int x = 0; x <= n; x++) {
      mass[x] /= sum;
    }
    return mass;
  }

  /**
   * The count of one item where the whole count is distributed as given: thinning as a finite sum.
   *
   * @param whole distribution of the whole count
   * @param a &gt; 0
   * @param b &ge; 0
   */
  public static CountDistribution thin(CountDistribution whole, double a, double b) {
    double[] each = whole.masses();
    double[] mass = each.length <= STEPWISE ? thinStepwise(each, a, b) : thinEach(each, a, b);
    return CountDistribution.of(mass, whole.mean() * a / (a + b), whole.bundle());
  }

  private static double[] thinEach(double[] whole, double a, double b) {
    double[] mass = new double[whole.length];
    for (int n = 0; n < mass.length; n++) {
      double chance = whole[n];
      if (chance > 0) {
        double[] given = pmf(n, a, b);
        for (int x = 0; x <= n; x++) {
          mass[x] += chance * given[x];
        }
      }
    }
    return mass;
  }

  /**
   * The same, each row of probabilities from the one before: P(x | n) = P(x | n-1) n / (n-x)
   * (b+n-1-x) / (a+b+n-1). Products of positive numbers only.
   */
  private static double[] thinStepwise(double[] whole, double a, double b) {
    int cut = whole.length;
    double[] mass = new double[cut];
    double[] given = new double[cut];
    double[] rise = new double[cut];
    for (int k = 1; k < cut; k++) {
      rise[k] = (b + k - 1) / k;
    }
    given[0] = 1;
    mass[0] = whole[0];
    for (int n = 1; n < cut; n++) {
      double chance = whole[n];
      double common = n / (a + b + n - 1);
      given[n] = given[n - 1] * (a + n - 1) / (a + b + n - 1);
      mass[n] += chance * given[n];
      for (int x = 0; x < n; x++) {
        given[x] *= common * rise[n - x];
        mass[x] += chance * given[x];
      }
    }
    return mass;
  }

  /**
   * P(no item gets more than its limit) for 0, 1, ..., largest pieces, where the items share as
   * Dirichlet.
   *
   * @param weights Dirichlet parameters of the items with a limit, each &gt; 0
   * @param limits their limits, each &ge; 0
   * @param rest sum of the parameters of the items without a limit, &ge; 0
   * @param largest largest number of pieces asked for
   */
  public static double[] withinLimits(
      List<Double> weights, List<Integer> limits, double rest, int largest) {
    // Dirichlet-multinomial = independent negative binomials given their sum, so the joint
    // distribution is a convolution of the sequences (a)_n / n!.
    double[] held = sequence(rest, largest, largest);
    double all = rest;
    for (int i = 0; i < weights.size(); i++) {
      all += weights.get(i);
      held = convolve(held, sequence(weights.get(i), limits.get(i), largest));
    }
    double[] whole = sequence(all, largest, largest);
    for (int n = 0; n <= largest; n++) {
      held[n] = Math.min(1, held[n] / whole[n]);
    }
    return held;
  }

  private static double[] sequence(double a, int limit, int largest) {
    double[] values = new double[Math.min(limit, largest) + 1];
    values[0] = 1;
    for (int n = 1; n < values.length; n++) {
      values[n] = values[n - 1] * (a + n - 1) / n;
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
