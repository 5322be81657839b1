package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.BetaDistribution;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;
import sparewell.numerics.GaussNodes;

/**
 * Coming losses of one style under a fit: over the draws of the hyperparameters and the points of
 * the rate &lambda;, the mixture of sums of NegBin(mean share &times; hours &times; &lambda;
 * &times; cover, size &kappa; &times; days).
 */
final class LossPrediction {
  private static final int SHARE_NODES = 12;
  // Points of less weight are left out: together under 1e-6, far below the sampling error of the
  // draws.
  private static final double WEIGHT_FLOOR = 1e-10;

  private LossPrediction() {}

  /**
   * Pieces of a style lost over all the terms together.
   *
   * @param draws weights sum to 1
   * @param terms at least one
   */
  static CountDistribution whole(List<Draw> draws, int style, List<RateFit.Term> terms) {
    double[] all = new double[terms.size()];
    Arrays.fill(all, 1);
    return mixture(draws, style, terms, new double[][] {all}, new double[] {1});
  }

  /**
   * Pieces of an item lost over groups of terms, where the item has a share in each group that is
   * Beta(own, rest of the group) and the shares rise and fall together. The share is integrated by
   * 12 Gauss nodes; exact to about 1e-7 where all rests are equal.
   *
   * @param own Dirichlet parameter of the item, &gt; 0
   * @param rests those of the other items of each group together, &ge; 0 and not all 0
   */
  static CountDistribution shared(
      List<Draw> draws,
      int style,
      List<List<RateFit.Term>> groups,
      double own,
      List<Double> rests) {
    double some = rests.stream().filter(rest -> rest > 0).findFirst().orElseThrow();
    List<GaussNodes.Node> nodes = GaussNodes.ofBeta(SHARE_NODES, own, some);
    List<RateFit.Term> terms = groups.stream().flatMap(List::stream).toList();
    double[][] factors = new double[SHARE_NODES][terms.size()];
    int first = 0;
    for (int g = 0; g < groups.size(); g++) {
      int next = first + groups.get(g).size();
      double[] shares = shares(nodes, own, some, rests.get(g));
      for (int k = 0; k < SHARE_NODES; k++) {
        Arrays.fill(factors[k], first, next, shares[k]);
      }
      first = next;
    }
    double[] chances = nodes.stream().mapToDouble(GaussNodes.Node::weight).toArray();
    return mixture(draws, style, terms, factors, chances);
  }

  /** The shares at the same quantiles as the nodes, moved so that their mean is right. */
  private static double[] shares(
      List<GaussNodes.Node> nodes, double own, double some, double rest) {
    double[] shares = nodes.stream().mapToDouble(GaussNodes.Node::x).toArray();
    if (rest == 0) {
      Arrays.fill(shares, 1);
    } else if (rest != some) {
      BetaDistribution from = new BetaDistribution(null, own, some, 1e-10);
      BetaDistribution to = new BetaDistribution(null, own, rest, 1e-10);
      double mean = 0;
      for (int k = 0; k < shares.length; k++) {
        shares[k] = to.inverseCumulativeProbability(from.cumulativeProbability(shares[k]));
        mean += nodes.get(k).weight() * shares[k];
      }
      for (int k = 0; k < shares.length; k++) {
        shares[k] *= own / (own + rest) / mean;
      }
    }
    return shares;
  }

  /**
   * The mixture.
   *
   * @param factors share of the style's losses that counts, by alternative, then term
   * @param chances chance of each alternative
   */
  private static CountDistribution mixture(
      List<Draw> draws, int style, List<RateFit.Term> terms, double[][] factors, double[] chances) {
    CountMixture mixture = new CountMixture(terms.size());
    double[] means = new double[terms.size()];
    double[] sizes = new double[terms.size()];
    double beyond = RateFit.stepsBeyond(terms);
    for (Draw draw : draws) {
      RatePoints rates = draw.rate(style, beyond);
      for (int e = 0; e < sizes.length; e++) {
        sizes[e] = draw.posterior().hyper().size * terms.get(e).days();
      }
      for (int i = 0; i < rates.count(); i++) {
        double weight = draw.weight() * rates.weight(i);
        if (weight > WEIGHT_FLOOR) {
          double rate = rates.rate(i);
          for (int k = 0; k < factors.length; k++) {
            for (int e = 0; e < means.length; e++) {
              RateFit.Term term = terms.get(e);
              means[e] = factors[k][e] * rate * term.hours() * draw.multiplier(term.cover());
            }
            mixture.add(weight * chances[k], means, sizes);
          }
        }
      }
    }
    return mixture.distribution();
  }
}
