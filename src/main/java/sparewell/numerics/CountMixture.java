package sparewell.numerics;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;

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
  private static final int LONGEST = 3_000;
  private static final double FLOOR = -600; // e^-600 is still a number
  private static final double SPENT = 1e-15;
  private static final double MOST_PIECES = 1e8;
  private static final int MOST_BUNDLE = 1 << 19; // times the longest list is an int
  private static final double MOST_WORK = 1.5e6; // term by part by count, beyond which parts merge
  private static final double SHARP =
      1e5; // shape of a part that ends within a hundredth of its mean
  private static final double BY_MEAN = 20; // cells in ln of the mean, when they do
  private static final double BY_SIZE = 4; // and in ln of the size

  private final int terms;
  private final double tail;
  private int parts;
  private double[] weight = new double[64];
  private double[] centre = new double[64];
  private double[] reach = new double[64]; // pieces that hardly more are than
  private double[] f = new double[64]; // probability of the count reached
  private double[] pending = new double[64]; // ln of what it is still to be multiplied with
  private double[] share; // by part, then term; until counted the mean
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
   * @param means mean of each term, &ge; 0; together more than 1e8 count as 1e8
   * @param sizes size of each term, &gt; 0
   */
  public void add(double chance, double[] means, double[] sizes) {
    if (parts == weight.length) {
      weight = Arrays.copyOf(weight, 2 * parts);
      centre = Arrays.copyOf(centre, 2 * parts);
      reach = Arrays.copyOf(reach, 2 * parts);
      f = Arrays.copyOf(f, 2 * parts);
      pending = Arrays.copyOf(pending, 2 * parts);
      share = Arrays.copyOf(share, 2 * parts * terms);
      size = Arrays.copyOf(size, 2 * parts * terms);
      flow = Arrays.copyOf(flow, 2 * parts * terms);
    }
    double sum = Arrays.stream(means).sum();
    double scale = sum > MOST_PIECES ? MOST_PIECES / sum : 1;
    for (int e = 0; e < terms; e++) {
      share[parts * terms + e] = scale * means[e];
      size[parts * terms + e] = sizes[e];
    }
    weight[parts] = chance;
    centre[parts] = scale * sum;
    reach[parts] = reach(centre[parts], wholeSize(parts));
    total += chance;
    mean += chance * centre[parts];
    parts++;
  }

  /** Size of one negative binomial with the mean and the variance of a part. */
  private double wholeSize(int part) {
    double extra = 0;
    for (int k = part * terms; k < (part + 1) * terms; k++) {
      extra += share[k] / size[k] * share[k];
    }
    double square = centre[part] * centre[part];
    return square > 0 ? square / Math.max(extra, 1e-12 * square) : 1e12; // of nothing: any
  }

  /**
   * About the count that a ten-thousandth lies beyond: of a gamma distribution with the same mean
   * and variance, by Wilson and Hilferty's cube root, and below shape 1 by a power of it.
   */
  private static double reach(double mean, double size) {
    double shape = 1 / (1 / Math.max(mean, 1e-12) + 1 / Math.max(size, 0.01));
    double root = 1 - 1 / (9 * shape) + 3.72 / (3 * Math.sqrt(shape));
    return mean * (shape < 1 ? 9.6 * Math.pow(shape, -0.7) : root * root * root);
  }

  /**
   * The mixture as a distribution. Where less than a ten-thousandth lies beyond 3,000 pieces, it is
   * one of single pieces, cut where less than its tail (1e-10) is left, at 3,000 in any case. Else
   * it is one of bundles, so many pieces in each that 1,500 to 3,000 of them hold it, which is
   * right to about one bundle; the spread of a single part is overstated by at most 4.5 % of its
   * mean. The weights are made to sum to 1. To be called once.
   */
  public CountDistribution distribution() {
    if (!(total > 0)) {
      return CountDistribution.none();
    }
    if (reachesFar()) {
      CountMixture single = merged(1);
      int bundle = single.bundle();
      if (bundle > 1) {
        return single.counted(bundle);
      }
    }
    if (work() <= MOST_WORK) {
      return counted(1);
    }
    CountMixture same = merged(terms);
    return (same.work() <= MOST_WORK ? same : merged(1)).counted(1);
  }

  private double work() {
    double work = 0;
    for (int i = 0; i < parts; i++) {
      work += terms * Math.min(reach[i], LONGEST);
    }
    return work;
  }

  /** Whether more may lie beyond the longest list of pieces than is left out. */
  private boolean reachesFar() {
    double sum = 0;
    for (int i = 0; i < parts; i++) {
      sum += reach[i] > LONGEST ? weight[i] : 0;
    }
    return sum > FAR_TAIL * total;
  }

  /** Pieces in a bundle, so that hardly anything lies beyond the longest list of bundles. */
  private int bundle() {
    int bundle = 1;
    while (bundle < MOST_BUNDLE && beyond((double) bundle * LONGEST) > FAR_TAIL * total) {
      bundle *= 2;
    }
    return bundle;
  }

  /** Weight beyond so many pieces, of gamma distributions with the parts' means and variances. */
  private double beyond(double pieces) {
    double sum = 0;
    for (int i = 0; i < parts; i++) {
      if (reach[i] > pieces) {
        double shape = 1 / (1 / centre[i] + 1 / wholeSize(i));
        double its =
            shape > SHARP
                ? 1
                : Gamma.regularizedGammaQ(shape, shape * pieces / centre[i], 1e-6, 10_000);
        sum += weight[i] * its;
      }
    }
    return sum;
  }

  /**
   * Parts of about the same mean and size as one: means stay right, and spreads to about a
   * hundredth of the mean.
   *
   * @param kept as many terms as now, or 1: one negative binomial in place of the sum
   */
  private CountMixture merged(int kept) {
    Map<Long, double[]> cells = new LinkedHashMap<>();
    for (int i = 0; i < parts; i++) {
      double whole = wholeSize(i);
      long x = Math.round(BY_MEAN * Math.log(Math.max(centre[i], 1e-9)));
      long y = Math.round(BY_SIZE * Math.log(whole));
      double[] cell = cells.computeIfAbsent((x << 32) + y, key -> new double[1 + 2 * kept]);
      cell[0] += weight[i];
      for (int e = 0; e < kept; e++) {
        int k = i * terms + e;
        cell[1 + 2 * e] += weight[i] * (kept == terms ? share[k] : centre[i]);
        cell[2 + 2 * e] += weight[i] / (kept == terms ? size[k] : whole);
      }
    }
    CountMixture merged = new CountMixture(kept, tail);
    double[] means = new double[kept];
    double[] sizes = new double[kept];
    for (double[] cell : cells.values()) {
      for (int e = 0; e < kept; e++) {
        means[e] = cell[1 + 2 * e] / cell[0];
        sizes[e] = cell[0] / cell[2 + 2 * e];
      }
      if (cell[0] > 0) {
        merged.add(cell[0], means, sizes);
      }
    }
    return merged;
  }

  private CountDistribution counted(int bundle) {
    for (int i = 0; i < parts; i++) {
      begin(i, bundle);
    }
    double[] mass = new double[64];
    double sum = 0;
    int n = 0;
    while (true) {
      if (n == mass.length) {
        mass = Arrays.copyOf(mass, 2 * n);
      }
      mass[n] = now() / total;
      sum += mass[n];
      n++;
      if (n == LONGEST || 1 - sum < tail) {
        break;
      }
      for (int i = 0; i < parts; i++) {
        advance(i, n);
      }
      if (n % 8 == 0) {
        dropSpent(n);
      }
    }
    return CountDistribution.of(Arrays.copyOf(mass, n), mean / total, bundle);
  }

  /** Brings a part to the count 0. */
  private void begin(int i, int bundle) {
    double logZero = 0;
    for (int k = i * terms; k < (i + 1) * terms; k++) {
      double bundles = share[k] / bundle;
      // What the whole bundles add to the variance is taken off that of the size.
      size[k] = 1 / Math.max(1e-12, 1 / size[k] - (bundle - 1) / Math.max(share[k], 1e-12));
      logZero -= size[k] * Math.log1p(bundles / size[k]);
      share[k] = bundles / (size[k] + bundles);
    }
    centre[i] /= bundle;
    pending[i] = Math.min(0, logZero - FLOOR);
    f[i] = Math.exp(Math.max(logZero, FLOOR));
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
