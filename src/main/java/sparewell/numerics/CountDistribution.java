package sparewell.numerics;

import java.util.Arrays;

/**
 * Distribution of a whole count N &ge; 0, held as P(N = n) for n below a cut and the probability
 * and mean of what lies beyond it.
 *
 * <p>Immutable. With P(N &ge; cut) at or below 1e-10 all answers are accurate to about 1e-9. The
 * makers of these in this project see to that, save for very long tails ({@link CountMixture}),
 * which they cut at 1e-4; the mean is that of the whole support even then.
 */
public final class CountDistribution {
  private final double[] atMost; // P(N <= n)
  private final double[] mass; // P(N = n)
  private final double mean;

  private CountDistribution(double[] mass, double mean) {
    this.mass = mass;
    this.mean = mean;
    this.atMost = new double[mass.length];
    double sum = 0;
    for (int n = 0; n < mass.length; n++) {
      sum += mass[n];
      atMost[n] = Math.min(1, sum);
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
    return n < 0 ? 0 : n < atMost.length ? atMost[n] : 1;
  }

  /** P(N &gt; n), the chance that a stock of n runs out. */
  public double above(int n) {
    return 1 - atMost(n);
  }

  /**
   * E max(N - n, 0), the expected shortage with a stock of n: E N minus the sum of P(N &gt; k) for
   * k below n.
   */
  public double expectedShortage(int n) {
    double shortage = mean;
    for (int k = 0; k < Math.min(n, mass.length); k++) {
      shortage -= above(k);
    }
    return Math.max(0, shortage);
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
}
