package sparewell.rates.fit;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

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
  /** Rates less likely than this are left out. */
  private static final double UNLIKELY = 1e-10;

  private static final int MOST_KEPT = 3_000;

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
   * @param lasts chance that the items last if so many pieces are lost, for 0, 1, ...; 0 beyond
   */
  public record Lasting(List<RateFit.Term> terms, double[] lasts) {}

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
                    fit.input().familyOfStyle().get(style), family -> new java.util.ArrayList<>())
                .add(chances));
    double chance = 0;
    for (int d = 0; d < fit.draws().size(); d++) {
      Draw draw = fit.draws().get(d);
      double product = draw.weight();
      for (Map.Entry<Integer, List<double[][]>> family : byFamily.entrySet()) {
        FamilyPosterior mean = draw.posterior().family(family.getKey());
        double sum = 0;
        for (int m = 0; m < mean.count(); m++) {
          double here = mean.weight(m);
          for (double[][] style : family.getValue()) {
            here *= style[d][m];
          }
          sum += here;
        }
        product *= sum;
      }
      chance += product;
    }
    return Math.min(1, chance);
  }

  private double[][] chances(int style, List<Lasting> demands) {
    int family = fit.input().familyOfStyle().get(style);
    double[][] chances = new double[fit.draws().size()][];
    double beyond =
        RateFit.stepsBeyond(demands.stream().flatMap(demand -> demand.terms().stream()).toList());
    for (int d = 0; d < chances.length; d++) {
      Draw draw = fit.draws().get(d);
      RatePosterior posterior = draw.posterior();
      RateNodes nodes = posterior.nodes(style);
      RatePoints rates = draw.rate(style, beyond);
      double[] given = new double[rates.count()];
      Arrays.fill(given, 1);
      for (Lasting demand : demands) {
        times(given, rates, demand, draw);
      }
      double[] before = rates.expectation(nodes.count(), given);
      FamilyPosterior mean = posterior.family(family);
      chances[d] = new double[mean.count()];
      for (int m = 0; m < mean.count(); m++) {
        chances[d][m] = nodes.expectation(posterior.kernel(), mean.mean(m), before);
      }
    }
    return chances;
  }

  /** Multiplies the chances at each rate by those that the items of a demand last. */
  private static void times(double[] given, RatePoints rates, Lasting demand, Draw draw) {
    int terms = demand.terms().size();
    double[] perRate = new double[terms];
    double[] sizes = new double[terms];
    for (int e = 0; e < terms; e++) {
      RateFit.Term term = demand.terms().get(e);
      perRate[e] = term.hours() * draw.multiplier(term.cover());
      sizes[e] = draw.posterior().hyper().size * term.days();
    }
    double[] means = new double[terms];
    double[] flow = new double[terms];
    for (int i = 0; i < given.length; i++) {
      if (rates.weight(i) < UNLIKELY) {
        given[i] = 0;
        continue;
      }
      double rate = rates.rate(i);
      for (int e = 0; e < terms; e++) {
        means[e] = rate * perRate[e];
        flow[e] = 0;
      }
      given[i] *= expect(demand.lasts(), means, sizes, flow);
    }
  }

  /**
   * E g(N), N a sum of negative binomials, by the recursion of CountMixture; to 1e-12.
   *
   * @param g from 0 to 1; 0 beyond its end
   * @param means of each term; used up
   * @param sizes of each term
   * @param flow 0 for each term; used up
   */
  private static double expect(double[] g, double[] means, double[] sizes, double[] flow) {
    double logZero = 0;
    for (int e = 0; e < means.length; e++) {
      logZero -= sizes[e] * Math.log1p(means[e] / sizes[e]);
      means[e] /= sizes[e] + means[e];
    }
    if (logZero < -600) {
      return 0; // hundreds of pieces: no stock in question lasts
    }
    double f = Math.exp(logZero);
    double sum = f * g[0];
    double seen = f;
    for (int n = 1; n < g.length && 1 - seen > 1e-12; n++) {
      double next = 0;
      for (int e = 0; e < means.length; e++) {
        flow[e] = means[e] * (flow[e] + sizes[e] * f);
        next += flow[e];
      }
      f = next / n;
      seen += f;
      sum += f * g[n];
    }
    return sum;
  }
}
