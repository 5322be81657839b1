package sparewell.numerics;

import java.util.Arrays;

/** A mixture of negative binomial counts. */
public final class CountMixture {
  /** Counts beyond stand at this one: whoever is asked to carry so many has mistyped something. */
  static final int MOST = 10_000;

  private static final double MOST_EXPECTED = 1e8;
  private static final double TAIL = 1e-10;
  private static final double SPENT = 1e-3; // of the tail, what a part leaves out

  private final double tail;
  private double[] mass = new double[64];
  private double total;
  private double mean;

  /** An empty mixture. */
  public CountMixture() {
    this(TAIL);
  }

  /**
   * An empty mixture whose distribution is cut where less than the given tail is left.
   *
   * @param tail in (0, 1)
   */
  public CountMixture(double tail) {
    this.tail = tail;
  }

  /**
   * Adds a part: its probabilities from the likeliest count outward, each from the one before.
   *
   * @param weight &ge; 0; those of all parts sum to 1 or a little less
   * @param expected mean of the part, &ge; 0; more than 1e8 counts as 1e8
   * @param size &gt; 0
   */
  public void add(double weight, double expected, double size) {
    double within = Math.min(expected, MOST_EXPECTED);
    total += weight;
    mean += weight * within;
    double share = within / (size + within);
    int mode = (int) Math.max(0, Math.min(MOST, (size - 1) / size * within));
    double peak = weight * Math.exp(NegativeBinomial.logPmf(mode, within, size));
    double left = weight;
    reserve(mode);
    double below = peak;
    for (int n = mode; n > 0 && below > 0; n--) {
      below *= n / ((size + n - 1) * share);
      mass[n - 1] += below;
      left -= below;
    }
    double here = peak;
    int n = mode;
    while (n < MOST && here > 0 && left > SPENT * tail) {
      reserve(n);
      mass[n] += here;
      left -= here;
      here *= (size + n) * share / ++n;
    }
    if (n == MOST) {
      reserve(n);
      mass[n] += Math.max(0, left);
    }
  }

  private void reserve(int n) {
    if (n >= mass.length) {
      mass = Arrays.copyOf(mass, Math.min(MOST + 1, 2 * n));
    }
  }

  /**
   * The mixture as a distribution, cut where less than its tail (1e-10) is left. The weights are
   * made to sum to 1.
   */
  public CountDistribution distribution() {
    if (!(total > 0)) {
      return CountDistribution.none();
    }
    double left = 1;
    int cut = 0;
    while (cut < mass.length && left >= tail) {
      mass[cut] /= total;
      left -= mass[cut++];
    }
    return CountDistribution.of(Arrays.copyOf(mass, cut), mean / total);
  }
}
