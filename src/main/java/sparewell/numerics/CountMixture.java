package sparewell.numerics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;

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
  private static final double MOST_WORK = 2e5; // term by part by count, beyond which parts merge
  private static final double SHARP = 1e5; // shape that ends within a hundredth of the mean
  private static final double BY_MEAN = 20; // cells in ln of the mean, when they do
  private static final double BY_SIZE = 4; // and in ln of the size

  private final double tail;
  private List<Part> parts = new ArrayList<>();
  private double total;
  private double mean;

  /**
   * A sum of terms.
   *
   * @param centre mean of the sum
   * @param reach pieces that hardly more are than
   */
  private record Part(
      double weight, double[] means, double[] sizes, double centre, double whole, double reach) {
    static Part of(double weight, double[] means, double[] sizes) {
      double mean = NegativeBinomialSum.mean(means);
      double size = NegativeBinomialSum.wholeSize(means, sizes);
      return new Part(weight, means, sizes, mean, size, CountMixture.reach(mean, size));
    }
  }

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
    parts.add(Part.of(chance, within, sizes));
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
   * The weights are made to sum to 1. To be called once.
   */
  public CountDistribution distribution() {
    if (!(total > 0)) {
      return CountDistribution.none();
    }
    int bundle = bundle();
    double work = 0;
    for (Part part : parts) {
      double terms = bundle > 1 ? 1 : part.means().length;
      work += terms * Math.min(part.reach() / bundle, LONGEST);
    }
    if (work > MOST_WORK) {
      parts = merged();
    }
    return counted(bundle);
  }

  /** Pieces in a bundle, so that hardly anything lies beyond the longest list of bundles. */
  private int bundle() {
    int bundle = 1;
    while (bundle < MOST_BUNDLE && moreBeyond((double) bundle * LONGEST)) {
      bundle *= 2;
    }
    return bundle;
  }

  /**
   * True if more than {@link #FAR_TAIL} lies beyond so many pieces, of gamma distributions with the
   * parts' means and variances; the sum ends where that is clear.
   */
  private boolean moreBeyond(double pieces) {
    double sum = 0;
    for (Part part : parts) {
      if (part.reach() > pieces) {
        double shape = 1 / (1 / part.centre() + 1 / part.whole());
        double its =
            shape > SHARP
                ? 1
                : Gamma.regularizedGammaQ(shape, shape * pieces / part.centre(), 1e-6, 10_000);
        sum += part.weight() * its;
        if (sum > FAR_TAIL * total) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Parts of about the same mean and size as one: means stay right, and spreads to about a
   * hundredth of the mean.
   */
  private List<Part> merged() {
    Map<Long, List<Part>> cells = new LinkedHashMap<>();
    for (Part part : parts) {
      long x = Math.round(BY_MEAN * Math.log(Math.max(part.centre(), 1e-9)));
      long y = Math.round(BY_SIZE * Math.log(part.whole()));
      cells.computeIfAbsent((x << 32) + y, key -> new ArrayList<>()).add(part);
    }
    return cells.values().stream().map(CountMixture::one).toList();
  }

  private static Part one(List<Part> alike) {
    int terms = alike.get(0).means().length;
    double weight = 0;
    double[] means = new double[terms];
    double[] sizes = new double[terms];
    for (Part part : alike) {
      weight += part.weight();
      for (int e = 0; e < terms; e++) {
        means[e] += part.weight() * part.means()[e];
        sizes[e] += part.weight() / part.sizes()[e];
      }
    }
    for (int e = 0; e < terms; e++) {
      means[e] = weight > 0 ? means[e] / weight : 0;
      sizes[e] = weight > 0 ? weight / sizes[e] : 1;
    }
    return Part.of(weight, means, sizes);
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
