package sparewell.numerics;

import java.util.Arrays;

/**
 * A mixture of sums of independent negative binomial counts, summed up exactly.
 *
 * <p>Each part is a sum over terms e of NegBin(mean m<sub>e</sub>, size r<sub>e</sub>). With
 * p<sub>e</sub> = m<sub>e</sub>/(r<sub>e</sub>+m<sub>e</sub>) its probabilities follow n f(n) =
 * &sum;<sub>e</sub> s<sub>e</sub>(n), s<sub>e</sub>(n) = p<sub>e</sub> (s<sub>e</sub>(n-1) +
 * r<sub>e</sub> f(n-1)), which is the derivative of the generating function read term by term. No
 * subtraction, so no cancellation.
 *
 * @see "Panjer, Recursive evaluation of a family of compound distributions, ASTIN 12 (1981), the
 *     same device (from memory)"
 */
public final class CountMixture {
  private static final double TAIL = 1e-10;
  private static final double FAR_TAIL = 1e-4;
  private static final int LONGEST = 20_000;
  private static final double FLOOR = -600; // e^-600 is still a number

  private static final double SPENT = 1e-15;

  private final int terms;
  private final double tail;
  private int parts;
  private double[] weight = new double[64];
  private double[] centre = new double[64];
  private double[] f = new double[64]; // probability of the count reached
  private double[] pending = new double[64]; // ln of what it is still to be multiplied with
  private double[] share; // by part, then term
  private double[] size;
  private double[] flow;
  private double total;
  private double mean;

  /** An empty mixture of sums of so many terms. */
  public CountMixture(int terms) {
    this(terms, TAIL);
  }

  /**
   * An empty mixture whose distribution is cut where less than the given tail is left.
   *
   * @param tail in (0, 1)
   */
  public CountMixture(int terms, double tail) {
    this.terms = terms;
    this.tail = tail;
    share = new double[64 * terms];
    size = new double[64 * terms];
    flow = new double[64 * terms];
  }

  /**
   * Adds a part.
   *
   * @param chance weight of the part, &ge; 0
   * @param means mean of each term, &ge; 0
   * @param sizes size of each term, &gt; 0
   */
  public void add(double chance, double[] means, double[] sizes) {
    if (parts == weight.length) {
      weight = Arrays.copyOf(weight, 2 * parts);
      centre = Arrays.copyOf(centre, 2 * parts);
      f = Arrays.copyOf(f, 2 * parts);
      pending = Arrays.copyOf(pending, 2 * parts);
      share = Arrays.copyOf(share, 2 * parts * terms);
      size = Arrays.copyOf(size, 2 * parts * terms);
      flow = Arrays.copyOf(flow, 2 * parts * terms);
    }
    double logZero = 0;
    double sum = 0;
    for (int e = 0; e < terms; e++) {
      logZero -= sizes[e] * Math.log1p(means[e] / sizes[e]);
      sum += means[e];
      share[parts * terms + e] = means[e] / (sizes[e] + means[e]);
      size[parts * terms + e] = sizes[e];
    }
    weight[parts] = chance;
    centre[parts] = sum;
    pending[parts] = Math.min(0, logZero - FLOOR);
    f[parts] = Math.exp(Math.max(logZero, FLOOR));
    total += chance;
    mean += chance * sum;
    parts++;
  }

  /** The mixture as a distribution of single pieces; see {@link #distribution(int)}. */
  public CountDistribution distribution() {
    return distribution(1);
  }

  /**
   * The mixture as a distribution, cut where less than its tail (1e-10) is left; beyond 500 + 15
   * times the mean, where tails are all but endless, once less than 1e-4 is left, so that quantiles
   * up to 99.99 % still hold; and at 20,000 in any case. The weights are made to sum to 1. To be
   * called once.
   *
   * @param bundle pieces that a count stands for: means were added in bundles
   */
  public CountDistribution distribution(int bundle) {
    if (!(total > 0)) {
      return CountDistribution.none();
    }
    double[] mass = new double[64];
    double sum = 0;
    int n = 0;
    double far = 500 + 15 * mean / total;
    while (true) {
      if (n == mass.length) {
        mass = Arrays.copyOf(mass, Math.min(LONGEST, 2 * n));
      }
      mass[n] = now() / total;
      sum += mass[n];
      n++;
      if (n == LONGEST || 1 - sum < (n < far ? tail : FAR_TAIL)) {
        break;
      }
      for (int i = 0; i < parts; i++) {
        advance(i, n);
      }
      if (n % 8 == 0) {
        dropSpent(n);
      }
    }
    return CountDistribution.of(Arrays.copyOf(mass, n), bundle * mean / total, bundle);
  }

  private double now() {
    double sum = 0;
    for (int i = 0; i < parts; i++) {
      sum += pending[i] == 0 ? weight[i] * f[i] : weight[i] * f[i] * Math.exp(pending[i]);
    }
    return sum;
  }

  private void advance(int i, int n) {
    double sum = 0;
    for (int k = i * terms; k < (i + 1) * terms; k++) {
      flow[k] = share[k] * (flow[k] + size[k] * f[i]);
      sum += flow[k];
    }
    f[i] = sum / n;
    if (pending[i] < 0 && f[i] > 1e100) {
      double by = Math.max(-230, pending[i]);
      f[i] *= Math.exp(by);
      for (int k = i * terms; k < (i + 1) * terms; k++) {
        flow[k] *= Math.exp(by);
      }
      pending[i] -= by;
    }
  }

  /** Leaves out parts that lie behind and have nothing more to add. */
  private void dropSpent(int n) {
    int kept = 0;
    for (int i = 0; i < parts; i++) {
      if (pending[i] < 0 || f[i] * weight[i] > SPENT * total || n < centre[i]) {
        weight[kept] = weight[i];
        centre[kept] = centre[i];
        f[kept] = f[i];
        pending[kept] = pending[i];
        System.arraycopy(share, i * terms, share, kept * terms, terms);
        System.arraycopy(size, i * terms, size, kept * terms, terms);
        System.arraycopy(flow, i * terms, flow, kept * terms, terms);
        kept++;
      }
    }
    parts = kept;
  }
}
