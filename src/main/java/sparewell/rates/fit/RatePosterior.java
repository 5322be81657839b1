package sparewell.rates.fit;

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
  private final RateNodes[] nodes; // null for a style without data, unless they are kept
  private final double[][] weights;
  private final FamilyPosterior[] families;
  private final GammaKernel kernel;
  private final double unit;
  private final int halvings;
  private final LatticeShift[] shifts;
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
    nodes = new RateNodes[data.styles()];
    weights = new double[data.styles()][];
    families = new FamilyPosterior[data.families()];
    shifts = new LatticeShift[hyper.multiplier.length + 1];
    double[] precision = new double[families.length];
    double finest = RateNodes.step(a, data.rough());
    for (int f = 0; f < families.length; f++) {
      precision[f] = 1 / (familySpread(f) * familySpread(f));
      for (int s : data.stylesOf(f)) {
        if (!data.history(s).empty()) {
          double pieces = data.history(s).pieces(hyper.size);
          precision[f] += a * (pieces + 1) / (a + pieces + 1);
          finest = Math.min(finest, RateNodes.step(a + pieces, data.rough()));
        }
      }
      finest = Math.min(finest, FamilyPosterior.step(precision[f], data.rough()));
    }
    // At most half the finest step, so that whole multiples come near what each style needs.
    halvings =
        Math.max(0, (int) Math.ceil(Math.log(2 * RateNodes.WIDEST / finest) / Math.log(2) - 1e-9));
    unit = RateNodes.WIDEST / (1 << halvings);
    kernel = new GammaKernel(a, unit);
    double sum = 0;
    for (int f = 0; f < families.length; f++) {
      sum += family(f, precision[f], keep);
    }
    logEvidence = sum;
  }

  /**
   * Works a family out, within the reach that the last set of hyperparameters left, and wider where
   * that turns out too narrow.
   *
   * @return ln of the chance of its data
   */
  private double family(int f, double precision, boolean keep) {
    double reachPrior = FamilyPosterior.REACH * familySpread(f);
    double centre = hyper.logRate + data.others().familyCentre(f);
    double least = centre - reachPrior;
    double most = centre + reachPrior;
    int[] styles = data.stylesOf(f);
    boolean known = false;
    for (int s : styles) {
      known |= !data.history(s).empty();
    }
    if (!known && !keep) {
      return 0;
    }
    double[] reach = data.reach(f);
    double low = known ? Math.max(least, Math.min(reach[0], most)) : least;
    double high = known ? Math.min(most, Math.max(reach[1], low)) : most;
    while (true) {
      List<RateNodes> seen = new ArrayList<>();
      for (int s : styles) {
        if (!data.history(s).empty()) {
          nodes[s] = points(s, low, high);
          seen.add(nodes[s]);
        }
      }
      families[f] =
          new FamilyPosterior(
              centre, familySpread(f), precision, data.rough(), low, high, kernel, seen);
      boolean widerLow = families[f].cutLow() && low > least;
      boolean widerHigh = families[f].cutHigh() && high < most;
      if (!widerLow && !widerHigh) {
        break;
      }
      double more = high - low + 1;
      low = widerLow ? Math.max(least, low - more) : low;
      high = widerHigh ? Math.min(most, high + more) : high;
    }
    FamilyPosterior family = families[f];
    if (known) {
      double margin = 3 * family.stride() * unit;
      reach[0] = family.mean(0) * unit - margin;
      reach[1] = family.mean(family.count() - 1) * unit + margin;
    }
    if (keep) {
      RateNodes blank = null;
      for (int s : styles) {
        if (data.history(s).empty()) {
          blank = blank == null ? points(s, low, high) : blank;
          kernel.reach(blank.first() - family.mean(family.count() - 1));
          nodes[s] = blank;
        }
      }
    }
    return known ? family.logEvidence() : 0;
  }

  private double familySpread(int family) {
    return data.others().familySpread(family, hyper.familySpread);
  }

  private RateNodes points(int style, double low, double high) {
    StyleHistory.Likelihood likelihood =
        data.history(style).at(hyper.size, hyper.multiplier, shifts);
    return new RateNodes(likelihood, unit, halvings, hyper.shape, low, high, data.rough());
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
      RateNodes points = nodes[style];
      FamilyPosterior family = families[data.familyOf(style)];
      double[] sum = new double[points.count() + 1];
      for (int i = 0; i < family.count(); i++) {
        points.addWeights(kernel, family.mean(i), family.weight(i), sum);
      }
      weights[style] = sum;
    }
    return weights[style];
  }

  /** Mean rate of a style, pieces per hour. */
  double meanRate(int style) {
    double[] weight = weights(style);
    RateNodes points = nodes[style];
    double mean = weight[points.count()] * points.tail().rate();
    for (int i = 0; i < points.count(); i++) {
      mean += weight[i] * points.rate(i);
    }
    return mean;
  }

  /** Variance of the log rate of a style. */
  double wholeLogVariance(int style) {
    double[] weight = weights(style);
    RateNodes points = nodes[style];
    double mean = weight[points.count()] * points.tail().logRate();
    double square = mean * points.tail().logRate();
    for (int i = 0; i < points.count(); i++) {
      double log = Math.log(points.rate(i));
      mean += weight[i] * log;
      square += weight[i] * log * log;
    }
    return Math.max(0, square - mean * mean);
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
