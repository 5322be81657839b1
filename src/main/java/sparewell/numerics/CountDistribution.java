package sparewell.numerics;

import java.util.Arrays;

/**
 * Distribution of a whole count N &ge; 0, held as the probabilities of 0, 1, ... below a cut, the
 * probability beyond it, and the mean. Immutable. With P(N &ge; cut) at or below 1e-10, as its
 * makers see to, answers are as accurate; where tails are all but endless, they are cut at 1e-4
 * ({@link CountMixture}), and the mean is still that of the whole support.
 */
public final class CountDistribution {
  /** Largest cut that {@link #thinned} takes: e<sup>-1500/e</sup> is far above the least double. */
  public static final int MOST_THINNED = 1_500;

  private final double[] mass;
  private final double[] atMost;
  private final double[] shortage; // E max(N - n, 0)
  private final double mean;

  private CountDistribution(double[] mass, double mean) {
    this.mass = mass;
    this.mean = mean;
    atMost = new double[mass.length];
    shortage = new double[mass.length + 1];
    shortage[0] = mean;
    double sum = 0;
    for (int n = 0; n < mass.length; n++) {
      sum += mass[n];
      atMost[n] = Math.min(1, sum);
      shortage[n + 1] = Math.max(0, shortage[n] - (1 - sum));
    }
  }

  /**
   * From its probabilities.
   *
   * @param mass P(N = n) for n = 0, 1, ...; each &ge; 0, sum in (0, 1 + 1e-9]
   * @param mean E N over the whole support, &ge; 0, also where the tail beyond {@code mass} is cut
   */
  public static CountDistribution of(double[] mass, double mean) {
    double sum = 0;
    for (double p : mass) {
      if (!(p >= 0)) {
        throw new IllegalArgumentException("probability out of range: " + p);
      }
      sum += p;
    }
    if (!(sum > 0 && sum <= 1 + 1e-9) || !(mean >= 0)) {
      throw new IllegalArgumentException("not a distribution: sum " + sum + ", mean " + mean);
    }
    return new CountDistribution(mass.clone(), mean);
  }

  /** The count that is certainly 0. */
  public static CountDistribution none() {
    return new CountDistribution(new double[] {1}, 0);
  }

  /** E N. */
  public double mean() {
    return mean;
  }

  /** How many counts have a stated probability; P(N &ge; cut) is the tail left out. */
  public int cut() {
    return mass.length;
  }

  /** P(N = n); 0 below 0 and from the cut on. */
  public double probabilityOf(int n) {
    return n < 0 || n >= mass.length ? 0 : mass[n];
  }

  /** P(N &le; n). */
  public double atMost(int n) {
    return n < 0 ? 0 : n < mass.length ? atMost[n] : 1;
  }

  /** P(N &gt; n), the chance that a stock of n runs out. */
  public double above(int n) {
    return 1 - atMost(n);
  }

  /** E max(N - n, 0), the expected shortage with a stock of n. */
  public double expectedShortage(int n) {
    return shortage[Math.max(0, Math.min(n, mass.length))];
  }

  /**
   * The least n with P(N &le; n) &ge; the asked probability, or the cut where the tail left out is
   * larger than what is asked for.
   *
   * @param probability in (0, 1)
   */
  public int quantile(double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("probability must lie between 0 and 1: " + probability);
    }
    // The sum of many terms may fall short of a round figure by rounding alone.
    double asked = probability - 1e-12;
    int found = Arrays.binarySearch(atMost, asked);
    int n = found >= 0 ? found : -found - 1;
    while (n > 0 && atMost[n - 1] >= asked) {
      n--;
    }
    return n;
  }

  /**
   * The count of one item where this is the whole count, of at most {@link #MOST_THINNED}: each
   * piece falls on the item with the same unknown chance, which is Beta(a, b).
   *
   * @param a &gt; 0
   * @param b &ge; 0
   * @see "Johnson, Kemp, Kotz, Univariate Discrete Distributions, 3rd ed., sec. 6.2.2 (from
   *     memory)"
   */
  public CountDistribution thinned(double a, double b) {
    // Each row of probabilities from the one before: P(x | n) = P(x | n-1) n / (n-x) (b+n-1-x) /
    // (a+b+n-1). Products of positive numbers only.
    double[] its = new double[mass.length];
    double[] given = new double[mass.length];
    double[] rise = new double[mass.length];
    for (int k = 1; k < mass.length; k++) {
      rise[k] = (b + k - 1) / k;
    }
    given[0] = 1;
    its[0] = mass[0];
    for (int n = 1; n < mass.length; n++) {
      double common = n / (a + b + n - 1);
      given[n] = given[n - 1] * (a + n - 1) / (a + b + n - 1);
      its[n] += mass[n] * given[n];
      for (int x = 0; x < n; x++) {
        given[x] *= common * rise[n - x];
        its[x] += mass[n] * given[x];
      }
    }
    return of(its, mean * a / (a + b));
  }
}
