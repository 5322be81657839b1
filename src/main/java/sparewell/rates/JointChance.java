package sparewell.rates;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Chance that all of several stocks last, with what they have in common taken into account: given
 * hyperparameters and family means, styles are independent.
 */
final class JointChance {
  private JointChance() {}

  /**
   * Losses of one style that fall on the same items.
   *
   * @param terms the exposures
   * @param lasts chance that the items last if so many pieces are lost, for 0, 1, ...; 0 beyond
   */
  record Demand(List<RateFit.Term> terms, double[] lasts) {}

  /**
   * The chance.
   *
   * @param demands by style; those of one style fall on different items
   */
  static double of(RateFit fit, Map<Integer, List<Demand>> demands) {
    Map<Integer, Map<Integer, List<Demand>>> byFamily = new LinkedHashMap<>();
    demands.forEach(
        (style, list) ->
            byFamily
                .computeIfAbsent(
                    fit.input().familyOfStyle().get(style), family -> new LinkedHashMap<>())
                .put(style, list));
    double chance = 0;
    for (Draw draw : fit.draws()) {
      double product = draw.weight();
      for (Map.Entry<Integer, Map<Integer, List<Demand>>> family : byFamily.entrySet()) {
        product *= ofFamily(draw, family.getKey(), family.getValue());
      }
      chance += product;
    }
    return Math.min(1, chance);
  }

  private static double ofFamily(Draw draw, int family, Map<Integer, List<Demand>> demands) {
    FamilyPosterior mean = draw.posterior().family(family);
    double[] product = new double[mean.count()];
    java.util.Arrays.fill(product, 1);
    for (Map.Entry<Integer, List<Demand>> style : demands.entrySet()) {
      RateNodes nodes = draw.posterior().nodes(style.getKey());
      double[] given = new double[nodes.count() + 1];
      for (int i = 0; i < given.length; i++) {
        given[i] = lasts(draw, draw.posterior().rate(style.getKey(), i), style.getValue());
      }
      for (int m = 0; m < product.length; m++) {
        double[] weights = new double[given.length];
        nodes.addWeights(draw.posterior().kernel(), mean.mean(m), 1, weights);
        double sum = 0;
        for (int i = 0; i < given.length; i++) {
          sum += weights[i] * given[i];
        }
        product[m] *= sum;
      }
    }
    double chance = 0;
    for (int m = 0; m < product.length; m++) {
      chance += mean.weight(m) * product[m];
    }
    return chance;
  }

  /** Chance that all of a style's items last at a given rate. */
  private static double lasts(Draw draw, double rate, List<Demand> demands) {
    double chance = 1;
    for (Demand demand : demands) {
      double[] means = new double[demand.terms().size()];
      double[] sizes = new double[means.length];
      for (int e = 0; e < means.length; e++) {
        RateFit.Term term = demand.terms().get(e);
        means[e] = rate * term.hours() * draw.multiplier(term.cover());
        sizes[e] = draw.posterior().hyper().size * term.days();
      }
      chance *= expect(demand.lasts(), means, sizes);
    }
    return chance;
  }

  /** E g(N), N a sum of negative binomials, by the recursion of CountMixture. */
  private static double expect(double[] g, double[] means, double[] sizes) {
    double logZero = 0;
    double mean = 0;
    for (int e = 0; e < means.length; e++) {
      logZero -= sizes[e] * Math.log1p(means[e] / sizes[e]);
      mean += means[e];
    }
    if (logZero < -600) {
      return 0; // hundreds of pieces: no stock in question lasts
    }
    double f = Math.exp(logZero);
    double[] flow = new double[means.length];
    double sum = f * g[0];
    double seen = f;
    for (int n = 1; n < g.length && (n < mean || 1 - seen > 1e-13); n++) {
      double next = 0;
      for (int e = 0; e < means.length; e++) {
        flow[e] = means[e] / (sizes[e] + means[e]) * (flow[e] + sizes[e] * f);
        next += flow[e];
      }
      f = next / n;
      seen += f;
      sum += f * g[n];
    }
    return sum;
  }
}
