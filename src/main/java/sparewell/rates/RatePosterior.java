package sparewell.rates;

import java.util.ArrayList;
import java.util.List;

/**
 * Everything known of rates and family means at one set of hyperparameters.
 *
 * <p>Given the hyperparameters, families are independent; given its family's mean, so are styles.
 */
final class RatePosterior {
  private final Hyper hyper;
  private final RateNodes[] nodes; // null for a style without data
  private final FamilyPosterior[] families;
  private final FitData data;
  private final double logEvidence;

  RatePosterior(FitData data, Hyper hyper) {
    this.data = data;
    this.hyper = hyper;
    nodes = new RateNodes[data.styles()];
    families = new FamilyPosterior[data.families()];
    double reach = FamilyPosterior.reach(hyper.familySpread);
    double sum = 0;
    for (int f = 0; f < families.length; f++) {
      List<RateNodes> known = new ArrayList<>();
      for (int s : data.stylesOf(f)) {
        if (!data.history(s).empty()) {
          nodes[s] = nodes(s, reach);
          known.add(nodes[s]);
        }
      }
      families[f] = new FamilyPosterior(hyper.logRate, hyper.familySpread, known);
      if (!known.isEmpty()) {
        sum += families[f].logEvidence();
      }
    }
    logEvidence = sum;
  }

  private RateNodes nodes(int style, double reach) {
    return new RateNodes(
        data.history(style).at(hyper.size, hyper.multiplier),
        hyper.shape,
        hyper.logRate - reach,
        hyper.logRate + reach);
  }

  /** ln of the chance of all data given the hyperparameters. */
  double logEvidence() {
    return logEvidence;
  }

  Hyper hyper() {
    return hyper;
  }

  /** The points of a style's rate. */
  RateNodes nodes(int style) {
    if (nodes[style] == null) {
      nodes[style] = nodes(style, FamilyPosterior.reach(hyper.familySpread));
    }
    return nodes[style];
  }

  /** The mean of a family. */
  FamilyPosterior family(int family) {
    return families[family];
  }

  /** Posterior weights of the points of a style's rate. */
  double[] weights(int style) {
    RateNodes points = nodes(style);
    FamilyPosterior family = families[data.familyOf(style)];
    double[] weights = new double[points.count()];
    for (int i = 0; i < family.count(); i++) {
      points.addWeights(family.logMean(i), family.weight(i), weights);
    }
    return weights;
  }

  /** Variance of the log rate of a style given its family's mean. */
  double logVariance(int style) {
    RateNodes points = nodes(style);
    FamilyPosterior family = families[data.familyOf(style)];
    double variance = 0;
    for (int i = 0; i < family.count(); i++) {
      variance += family.weight(i) * points.logVariance(family.logMean(i));
    }
    return variance;
  }
}
