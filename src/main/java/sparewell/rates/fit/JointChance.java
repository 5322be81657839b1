package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import sparewell.numerics.BetaBinomial;
import sparewell.numerics.NegativeBinomialSum;

/**
 * Chance that all of several stocks last, with what they have in common taken into account: given
 * hyperparameters and family means, styles are independent.
 *
 * <p>What a style contributes is kept for the last few stocks asked for, since one question after
 * the other changes few styles.
 *
 * @param <S> what tells stocks of a style apart
 */
public final class JointChance<S> {
  private static final int MOST_KEPT = 3_000;
  private static final double NOTHING = 1e-12;

  private final RateFit fit;
  private final int keptForStyle;
  private final Map<Integer, Map<S, double[][]>> kept = new LinkedHashMap<>();

  /** Under a fit. */
  public JointChance(RateFit fit) {
    this.fit = fit;
    keptForStyle = Math.max(1, Math.min(8, MOST_KEPT / Math.max(1, fit.input().styles())));
  }

  /**
   * How long the items last on which the same losses of a style fall.
   *
   * @param terms the exposures
   * @param lasts chance that the items last if so many bundles are lost, for 0, 1, ...; 0 beyond
   * @param bundle pieces in a bundle
   */
  public record Lasting(List<RateFit.Term> terms, double[] lasts, int bundle) {
    private static final int LONGEST = 400;

    /**
     * Chance of lasting for items with limits that share losses as Dirichlet; in bundles where
     * single pieces, even a thousand, might not be all that the items last.
     *
     * @param weights Dirichlet parameters of the items, each with its limit of pieces
     * @param rest those of all items without a limit
     * @param most pieces that hardly more are lost than
     */
    public static Lasting of(
        List<RateFit.Term> terms,
        List<Double> weights,
        List<Integer> limits,
        double rest,
        int most) {
      int first = 1 + Collections.min(limits) / LONGEST; // up to the least limit all last
      for (int bundle = first; ; bundle *= 2) {
        int each = bundle;
        int largest = Math.min(most / bundle, LONGEST);
        List<Integer> bundles = limits.stream().map(limit -> limit / each).toList();
        double[] lasts = BetaBinomial.withinLimits(weights, bundles, rest, largest);
        int last = largest;
        while (last > 0 && lasts[last] < NOTHING) {
          last--;
        }
        if (last < LONGEST || largest == most / bundle) {
          return new Lasting(terms, Arrays.copyOf(lasts, last + 1), bundle);
        }
      }
    }
  }

  /**
   * Chance that a style's stock lasts, by draw and by point of the family mean.
   *
   * @param demands what the stock is asked for, on different items each
   */
  public synchronized double[][] style(int style, S stock, Supplier<List<Lasting>> demands) {
    Map<S, double[][]> known = kept.computeIfAbsent(style, number -> new LinkedHashMap<>());
    double[][] chances = known.get(stock);
    if (chances == null) {
      chances = chances(style, demands.get());
      if (known.size() == keptForStyle) {
        known.remove(known.keySet().iterator().next());
      }
      known.put(stock, chances);
    }
    return chances;
  }

  /**
   * The chance that all last.
   *
   * @param styles what {@link #style} gave, by number of the style
   */
  public double all(Map<Integer, double[][]> styles) {
    Map<Integer, List<double[][]>> byFamily = new TreeMap<>();
    styles.forEach(
        (style, chances) ->
            byFamily
                .computeIfAbsent(
                    fit.input().familyOfStyle().get(style), family -> new ArrayList<>())
                .add(chances));
    double chance = 0;
    for (int d = 0; d < fit.draws().size(); d++) {
      double product = fit.draws().get(d).weight();
      for (Map.Entry<Integer, List<double[][]>> family : byFamily.entrySet()) {
        double[] mean = fit.draws().get(d).given().meanWeights(family.getKey());
        double sum = 0;
        for (int j = 0; j < mean.length; j++) {
          double here = mean[j];
          for (double[][] style : family.getValue()) {
            here *= style[d][j];
          }
          sum += here;
        }
        product *= sum;
      }
      chance += product;
    }
    return Math.max(0, Math.min(1, chance));
  }

  private double[][] chances(int style, List<Lasting> demands) {
    int family = fit.input().familyOfStyle().get(style);
    List<RateFit.Term> terms = demands.stream().flatMap(one -> one.terms().stream()).toList();
    double[][] lasts =
        terms.isEmpty()
            ? null
            : new Stretch(fit, style, terms)
                .expectation((means, sizes) -> lasts(demands, means, sizes));
    double[][] chances = new double[fit.draws().size()][];
    for (int d = 0; d < chances.length; d++) {
      Conditional given = fit.draws().get(d).given();
      chances[d] = new double[given.meanWeights(family).length];
      for (int j = 0; j < chances[d].length; j++) {
        chances[d][j] = lasts == null ? 1 : given.expected(style, given.mean(family, j), lasts[d]);
      }
    }
    return chances;
  }

  /** Chance that the items of all demands last. */
  private static double lasts(List<Lasting> demands, double[] means, double[] sizes) {
    double chance = 1;
    int from = 0;
    for (Lasting one : demands) {
      int to = from + one.terms().size();
      chance *=
          expect(one, Arrays.copyOfRange(means, from, to), Arrays.copyOfRange(sizes, from, to));
      from = to;
    }
    return chance;
  }

  /**
   * Expectation over a sum of negative binomials; in bundles off by 0.03 at most, else by 1e-12.
   */
  private static double expect(Lasting demand, double[] means, double[] sizes) {
    double[] lasts = demand.lasts();
    double[] lost =
        NegativeBinomialSum.probabilities(means, sizes, demand.bundle(), lasts.length, NOTHING);
    double sum = 0;
    for (int n = 0; n < lost.length; n++) {
      sum += lost[n] * lasts[n];
    }
    return sum;
  }
}
