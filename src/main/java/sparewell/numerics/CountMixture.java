package sparewell.numerics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A mixture of sums of independent negative binomial counts, each counted by {@link
 * NegativeBinomialSum}.
 */
public final class CountMixture {
  private static final double TAIL = 1e-10;
  private static final double FAR_TAIL = 1e-4;
  private static final double SPENT = 1e-3; // of the tail, what a part leaves out
  private static final int LONGEST = 3_000;
  private static final double MOST_PIECES = 1e8;
  private static final int MOST_BUNDLE = 1 << 19; // times the longest list is an int

  private final double tail;
  private final List<Part> parts = new ArrayList<>();
  private double total;
  private double mean;

  /**
   * A sum of terms.
   *
   * @param reach pieces that hardly more are than
   */
  private record Part(double weight, double[] means, double[] sizes, double reach) {}

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
   * Adds a part.
   *
   * @param chance weight of the part, &ge; 0
   * @param means mean of each term, &ge; 0; together more than 1e8 count as 1e8
   * @param sizes size of each term, &gt; 0; as many for each part
   */
  public void add(double chance, double[] means, double[] sizes) {
    double sum = NegativeBinomialSum.mean(means);
    double[] within = means;
    if (sum > MOST_PIECES) {
      within = Arrays.stream(means).map(one -> one / sum * MOST_PIECES).toArray();
    }
    double reach = reach(Math.min(sum, MOST_PIECES), NegativeBinomialSum.wholeSize(within, sizes));
    parts.add(new Part(chance, within, sizes, reach));
    total += chance;
    mean += chance * Math.min(sum, MOST_PIECES);
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
   * it is one of bundles, so many pieces in each that at most 3,000 of them hold it, which is right
   * to about one bundle; the spread of a single part is overstated by at most 4.5 % of its mean.
   * The weights are made to sum to 1.
   */
  public CountDistribution distribution() {
    if (!(total > 0)) {
      return CountDistribution.none();
    }
    int bundle = 1;
    while (bundle < MOST_BUNDLE && beyond((double) bundle * LONGEST) > FAR_TAIL * total) {
      bundle *= 2;
    }
    return counted(bundle);
  }

  /** Weight of the parts that reach beyond so many pieces. */
  private double beyond(double pieces) {
    double sum = 0;
    for (Part part : parts) {
      sum += part.reach() > pieces ? part.weight() : 0;
    }
    return sum;
  }

  private CountDistribution counted(int bundle) {
    double[] mass = new double[64];
    for (Part part : parts) {
      double weight = part.weight() / total;
      double[] its =
          NegativeBinomialSum.probabilities(
              part.means(), part.sizes(), bundle, LONGEST, SPENT * tail / weight);
      if (its.length > mass.length) {
        mass = Arrays.copyOf(mass, its.length);
      }
      for (int n = 0; n < its.length; n++) {
        mass[n] += weight * its[n];
      }
    }
    int most = mass.length;
    while (most > 1 && mass[most - 1] == 0) {
      most--; // zeros behind the probabilities of all parts
    }
    double left = 1;
    int cut = 0;
    while (cut < most && left >= tail) {
      left -= mass[cut++];
    }
    return CountDistribution.of(Arrays.copyOf(mass, cut), mean / total, bundle);
  }
}
