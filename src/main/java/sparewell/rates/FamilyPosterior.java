package sparewell.rates;

import java.util.List;
import sparewell.numerics.GaussHermite;

/**
 * The mean rate of one family as weighted points, for given hyperparameters.
 *
 * <p>The log posterior of the log mean is concave, so Newton's method finds its peak, and
 * Gauss-Hermite nodes around it, scaled by its curvature, integrate it.
 */
final class FamilyPosterior {
  private static final List<GaussHermite.Node> NODES = GaussHermite.nodes(11);
  private static final double[] Z = NODES.stream().mapToDouble(GaussHermite.Node::z).toArray();
  private static final double[] LOG_WEIGHT =
      NODES.stream().mapToDouble(node -> Math.log(node.weight())).toArray();

  private final double[] logMean = new double[Z.length];
  private final double[] weight = new double[Z.length];
  private final double logEvidence;

  /**
   * Integrates.
   *
   * @param centre prior mean of the family's log mean rate
   * @param spread its prior standard deviation
   * @param styles the styles of the family that have data
   */
  FamilyPosterior(double centre, double spread, List<RateNodes> styles) {
    double precision = 1 / (spread * spread);
    double m = centre;
    double curvature = precision;
    if (!styles.isEmpty()) {
      double[] terms = new double[3];
      for (int iteration = 0; iteration < 60; iteration++) {
        terms[0] = 0;
        terms[1] = (centre - m) * precision;
        terms[2] = -precision;
        for (RateNodes style : styles) {
          style.addEvidence(m, terms);
        }
        curvature = Math.max(-terms[2], precision);
        double move = terms[1] / curvature;
        double most = 2.5 * spread;
        m += Math.max(-most, Math.min(most, move));
        m = Math.max(centre - reach(spread), Math.min(centre + reach(spread), m));
        if (Math.abs(move) * Math.sqrt(curvature) < 1e-3) {
          break;
        }
      }
    }
    double scale = 1 / Math.sqrt(curvature);
    double largest = Double.NEGATIVE_INFINITY;
    double[] logs = new double[Z.length];
    for (int i = 0; i < Z.length; i++) {
      logMean[i] = m + scale * Z[i];
      double away = (logMean[i] - centre) / spread;
      double value = -away * away / 2 - Math.log(spread) + Math.log(scale);
      value += Z[i] * Z[i] / 2 + LOG_WEIGHT[i];
      for (RateNodes style : styles) {
        value += style.logEvidence(logMean[i]);
      }
      logs[i] = value;
      largest = Math.max(largest, value);
    }
    double sum = 0;
    for (int i = 0; i < Z.length; i++) {
      weight[i] = Math.exp(logs[i] - largest);
      sum += weight[i];
    }
    for (int i = 0; i < Z.length; i++) {
      weight[i] /= sum;
    }
    logEvidence = largest + Math.log(sum);
  }

  /** How far from the prior mean the family mean is looked for. */
  static double reach(double spread) {
    return 5 * spread;
  }

  int count() {
    return Z.length;
  }

  double logMean(int i) {
    return logMean[i];
  }

  double weight(int i) {
    return weight[i];
  }

  /** ln of the chance of all the family's data. */
  double logEvidence() {
    return logEvidence;
  }
}
