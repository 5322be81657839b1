package sparewell.rates;

import java.util.ArrayList;
import java.util.List;

/**
 * Everything known of rates and family means at one set of hyperparameters.
 *
 * <p>Given the hyperparameters, families are independent; given its family's mean, so are styles.
 */
final class RatePosterior {
  private final FitData data;
  private final Hyper hyper;
  private final RateNodes[] nodes; // null for a style without data, until asked for
  private final double[][] weights;
  private final double[][] blankWeights; // of a style without data, by family
  private RateNodes blank;
  private final FamilyPosterior[] families;
  private final GammaKernel kernel;
  private final double unit;
  private final int halvings;
  private final double lowMean;
  private final double highMean;
  private final double logEvidence;

  /**
   * Works it out.
   *
   * @param keep whether styles without data will be asked for too
   */
  RatePosterior(FitData data, Hyper hyper, boolean keep) {
    this.data = data;
    this.hyper = hyper;
    double a = hyper.shape;
    lowMean = hyper.logRate - FamilyPosterior.REACH * hyper.familySpread;
    highMean = hyper.logRate + FamilyPosterior.REACH * hyper.familySpread;
    nodes = new RateNodes[data.styles()];
    weights = new double[data.styles()][];
    blankWeights = new double[data.families()][];
    double[] precision = new double[data.families()];
    double most = a;
    double strongest = 0;
    for (int f = 0; f < precision.length; f++) {
      precision[f] = 1 / (hyper.familySpread * hyper.familySpread);
      for (int s : data.stylesOf(f)) {
        if (!data.history(s).empty()) {
          double pieces = data.history(s).pieces();
          precision[f] += a * (pieces + 1) / (a + pieces + 1);
          most = Math.max(most, a + pieces);
        }
      }
      strongest = Math.max(strongest, precision[f]);
    }
    halvings =
        Math.max(
            RateNodes.halvings(most),
            (int) Math.ceil(Math.log(RateNodes.WIDEST * Math.sqrt(strongest)) / Math.log(2)));
    unit = RateNodes.WIDEST / (1 << halvings);
    int lowest = Integer.MAX_VALUE;
    int highest = Integer.MIN_VALUE;
    for (int s = 0; s < nodes.length; s++) {
      if (keep || !data.history(s).empty()) {
        nodes[s] = points(s);
        lowest = Math.min(lowest, nodes[s].first());
        highest = Math.max(highest, nodes[s].last());
      }
    }
    int lowestMean = (int) Math.floor(lowMean / unit);
    int highestMean = (int) Math.ceil(highMean / unit);
    kernel =
        lowest == Integer.MAX_VALUE
            ? new GammaKernel(a, unit, 0, 1)
            : new GammaKernel(a, unit, lowest - highestMean - 1, highest - lowestMean + 1);
    families = new FamilyPosterior[data.families()];
    double sum = 0;
    for (int f = 0; f < families.length; f++) {
      List<RateNodes> known = new ArrayList<>();
      for (int s : data.stylesOf(f)) {
        if (!data.history(s).empty()) {
          known.add(nodes[s]);
        }
      }
      if (keep || !known.isEmpty()) {
        families[f] =
            new FamilyPosterior(hyper.logRate, hyper.familySpread, precision[f], kernel, known);
      }
      if (!known.isEmpty()) {
        sum += families[f].logEvidence();
      }
    }
    logEvidence = sum;
  }

  /** The points of a style; all styles without data have the same. */
  private RateNodes points(int style) {
    boolean empty = data.history(style).empty();
    if (empty && blank != null) {
      return blank;
    }
    RateNodes points =
        new RateNodes(
            data.history(style).at(hyper.size, hyper.multiplier),
            unit,
            halvings,
            hyper.shape,
            lowMean,
            highMean);
    if (empty) {
      blank = points;
    }
    return points;
  }

  /** ln of the chance of all data given the hyperparameters. */
  double logEvidence() {
    return logEvidence;
  }

  Hyper hyper() {
    return hyper;
  }

  GammaKernel kernel() {
    return kernel;
  }

  /** The points of a style's rate. */
  RateNodes nodes(int style) {
    return nodes[style];
  }

  /** The mean of a family. */
  FamilyPosterior family(int family) {
    return families[family];
  }

  /** Posterior weights of the points of a style's rate; one more than there are, for the tail. */
  double[] weights(int style) {
    if (weights[style] == null) {
      int number = data.familyOf(style);
      boolean empty = nodes[style] == blank;
      if (empty && blankWeights[number] != null) {
        return blankWeights[number];
      }
      RateNodes points = nodes[style];
      FamilyPosterior family = families[number];
      double[] sum = new double[points.count() + 1];
      for (int i = 0; i < family.count(); i++) {
        points.addWeights(kernel, family.mean(i), family.weight(i), sum);
      }
      if (empty) {
        blankWeights[number] = sum;
      }
      weights[style] = sum;
    }
    return weights[style];
  }

  /** Rate of a point, the last one standing for the tail. */
  double rate(int style, int i) {
    return i < nodes[style].count() ? nodes[style].rate(i) : nodes[style].tailRate();
  }

  /** Variance of the log rate of a style given its family's mean. */
  double logVariance(int style) {
    FamilyPosterior family = families[data.familyOf(style)];
    double variance = 0;
    for (int i = 0; i < family.count(); i++) {
      variance += family.weight(i) * nodes[style].logVariance(kernel, family.mean(i));
    }
    return variance;
  }
}
