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
  private static final double SPENT = 1e-15;
  private static final double FLOOR = -600;

  private final int terms;
  private final double tail;
  private int parts;
  private double[] weight = new double[64];
  private double[] centre = new double[64];
  private double[] f = new double[64];
  private double[] pending = new double[64];
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
      int longer = 2 * parts;
      weight = Arrays.copyOf(weight, longer);
      centre = Arrays.copyOf(centre, longer);
      f = Arrays.copyOf(f, longer);
      pending = Arrays.copyOf(pending, longer);
      share = Arrays.copyOf(share, longer * terms);
      size = Arrays.copyOf(size, longer * terms);
      flow = Arrays.copyOf(flow, longer * terms);
    }
    double logZero = 0;
    double sum = 0;
    for (int e = 0; e < terms; e++) {
      double m = means[e];
      double r = sizes[e];
      logZero -= r * Math.log1p(m / r);
      sum += m;
      share[parts * terms + e] = m / (r + m);
      size[parts * terms + e] = r;
    }
    weight[parts] = chance;
    centre[parts] = sum;
    pending[parts] = Math.min(0, logZero - FLOOR);
    f[parts] = Math.exp(Math.max(logZero, FLOOR));
    total += chance;
    mean += chance * sum;
    parts++;
  }

  /**
   * The mixture as a distribution, cut where less than the tail asked for is left; beyond 500 + 15
   * times the mean, where tails are all but endless, once less than 1e-4 is left, so that quantiles
   * up to 99.99 % still hold; and at 20,000 in any case. The weights are made to sum to 1. To be
   * called once.
   */
  public CountDistribution distribution() {
    if (!(total > 0)) {
      return CountDistribution.none();
    }
    double[] mass = new double[64];
    double sum = 0;
    int n = 0;
    double far = 500 + 15 * mean / total;
    while (n < LONGEST) {
      if (n == mass.length) {
        mass = Arrays.copyOf(mass, 2 * n);
      }
      mass[n] = Math.max(0, current() / total);
      sum += mass[n];
      n++;
      if (1 - sum < (n < far ? tail : Math.max(tail, FAR_TAIL))) {
        break;
      }
      advance(n);
      if (n % 8 == 0) {
        dropSpent(n);
      }
    }
    return CountDistribution.of(Arrays.copyOf(mass, n), mean / total);
  }

  private double current() {
    double sum = 0;
    for (int i = 0; i < parts; i++) {
      sum += pending[i] == 0 ? weight[i] * f[i] : weight[i] * f[i] * Math.exp(pending[i]);
    }
    return sum;
  }

  private void advance(int n) {
    if (terms == 1) {
      for (int i = 0; i < parts; i++) {
        flow[i] = share[i] * (flow[i] + size[i] * f[i]);
        f[i] = flow[i] / n;
        if (pending[i] != 0) {
          lift(i);
        }
      }
      return;
    }
    for (int i = 0; i < parts; i++) {
      double sum = 0;
      for (int k = i * terms; k < (i + 1) * terms; k++) {
        flow[k] = share[k] * (flow[k] + size[k] * f[i]);
        sum += flow[k];
      }
      f[i] = sum / n;
      if (pending[i] != 0) {
        lift(i);
      }
    }
  }

  /** Leaves out parts that lie behind and have nothing more to add. */
  private void dropSpent(int seen) {
    int kept = 0;
    for (int i = 0; i < parts; i++) {
      boolean spent = pending[i] == 0 && f[i] * weight[i] < SPENT * total && seen > centre[i];
      if (!spent) {
        weight[kept] = weight[i];
        centre[kept] = centre[i];
        f[kept] = f[i];
        pending[kept] = pending[i];
        for (int e = 0; e < terms; e++) {
          share[kept * terms + e] = share[i * terms + e];
          size[kept * terms + e] = size[i * terms + e];
          flow[kept * terms + e] = flow[i * terms + e];
        }
        kept++;
      }
    }
    parts = kept;
  }

  /** Keeps a part whose first probabilities are too small for a double in range. */
  private void lift(int part) {
    if (f[part] > 1e100) {
      double by = Math.max(-230, pending[part]);
      double factor = Math.exp(by);
      f[part] *= factor;
      for (int k = part * terms; k < (part + 1) * terms; k++) {
        flow[k] *= factor;
      }
      pending[part] -= by;
    }
  }
}
