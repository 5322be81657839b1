package sparewell.numerics;

import java.util.Arrays;

/**
 * Distribution of a whole count N &ge; 0, held as the probabilities of 0, 1, ... below a cut, the
 * probability beyond it, and the mean.
 *
 * <p>Counts with a mean beyond some hundreds are held in bundles of several pieces, within which
 * they are spread evenly: a question of thousands of lures is not one of single pieces. Immutable.
 * With P(N &ge; cut) at or below 1e-10, as its makers see to, answers are as accurate; where tails
 * are all but endless, they are cut at 1e-4 ({@link CountMixture}), and the mean is still that of
 * the whole support.
 */
public final class CountDistribution {
  private final double[] mass; // by bundle
  private final double[] atMost; // up to the end of each bundle
  private final double[] short0; // E max(N - n, 0) at the start of each bundle
  private final double mean;
  private final int bundle;

  private CountDistribution(double[] mass, double mean, int bundle) {
    this.mass = mass;
    this.mean = mean;
    this.bundle = bundle;
    atMost = new double[mass.length];
    short0 = new double[mass.length + 1];
    short0[0] = mean;
    double sum = 0;
    for (int k = 0; k < mass.length; k++) {
      // P(N > n) summed over the pieces of the bundle, along which it falls evenly.
      short0[k + 1] = short0[k] - bundle * (1 - sum) + mass[k] * (bundle + 1) / 2;
      sum += mass[k];
      atMost[k] = Math.min(1, sum);
    }
  }

  /**
   * From its probabilities.
   *
   * @param mass P(N = n) for n = 0, 1, ...; each &ge; 0, sum in (0, 1 + 1e-9]
   * @param mean E N over the whole support, &ge; 0, also where the tail beyond {@code mass} is cut
   */
  public static CountDistribution of(double[] mass, double mean) {
    return of(mass, mean, 1);
  }

  /**
   * From its probabilities by bundles.
   *
   * @param mass P(k bundle &le; N &lt; (k + 1) bundle) for k = 0, 1, ...
   * @param mean E N, pieces
   * @param bundle pieces in a bundle, &ge; 1
   */
  public static CountDistribution of(double[] mass, double mean, int bundle) {
    double sum = 0;
    for (double p : mass) {
      if (!(p >= 0)) {
        throw new IllegalArgumentException("probability out of range: " + p);
      }
      sum += p;
    }
    if (!(sum > 0 && sum <= 1 + 1e-9) || !(mean >= 0) || bundle < 1) {
      throw new IllegalArgumentException("not a distribution: sum " + sum + ", mean " + mean);
    }
    return new CountDistribution(mass.clone(), mean, bundle);
  }

  /** The count that is certainly 0. */
  public static CountDistribution none() {
    return new CountDistribution(new double[] {1}, 0, 1);
  }

  /** E N. */
  public double mean() {
    return mean;
  }

  /** How many counts have a stated probability; P(N &ge; cut) is the tail left out. */
  public int cut() {
    return mass.length * bundle;
  }

  /** P(N in bundle k) for k = 0, 1, ... */
  double[] masses() {
    return mass.clone();
  }

  /** Pieces in a bundle; 1 where each count has its own probability. */
  public int bundle() {
    return bundle;
  }

  /** P(N = n); 0 below 0 and from the cut on. */
  public double probabilityOf(int n) {
    return n < 0 || n >= cut() ? 0 : mass[n / bundle] / bundle;
  }

  /** P(N &le; n). */
  public double atMost(int n) {
    if (n < 0 || n >= cut()) {
      return n < 0 ? 0 : 1;
    }
    int k = n / bundle;
    double missing = mass[k] * (bundle - 1 - n % bundle) / bundle;
    return bundle == 1 ? atMost[k] : Math.max(0, atMost[k] - missing);
  }

  /** P(N &gt; n), the chance that a stock of n runs out. */
  public double above(int n) {
    return 1 - atMost(n);
  }

  /** E max(N - n, 0), the expected shortage with a stock of n. */
  public double expectedShortage(int n) {
    if (n <= 0) {
      return mean;
    }
    int k = Math.min(n / bundle, mass.length);
    if (k == mass.length) {
      return Math.max(0, short0[k]);
    }
    // P(N > i) summed over the first pieces of the bundle, along which it falls evenly.
    double into = n - (double) k * bundle;
    double above =
        into * (1 - atMost[k]) + mass[k] / bundle * (into * (bundle - 1) - into * (into - 1) / 2);
    return Math.max(0, short0[k] - above);
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
    int k = found >= 0 ? found : -found - 1;
    while (k > 0 && atMost[k - 1] >= asked) {
      k--;
    }
    int n = k * bundle;
    while (k < mass.length && n < (k + 1) * bundle - 1 && atMost(n) < asked) {
      n++;
    }
    return n;
  }
}
