package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sparewell.numerics.QuasiNewton;

/**
 * What a log tells of the hyperparameters: weighted draws, by importance sampling around the peak
 * of their posterior.
 *
 * @param draws those that carry weight; the weights sum to 1
 * @param effective how many equally weighted draws they are worth
 * @param converged whether a peak was found and the draws around it carry the posterior
 * @param peak place of the peak, in prior standard deviations
 * @param precision minus the second derivatives there; empty where there is no peak
 * @param amount trips in the log
 */
record HyperPosterior(
    List<Draw> draws,
    double effective,
    boolean converged,
    double[] peak,
    double[][] precision,
    double amount) {
  private static final double NEAR = 1e-3; // gain left at which a climb ends, in ln of density
  private static final int MOST_STEPS = 60;
  private static final double ROUGHLY_NEAR = 0.05;
  private static final int FEW_STEPS = 6;
  private static final double FEWEST_EFFECTIVE = 8;
  private static final double ENOUGH_LEFT = 0.25;
  private static final double FEWEST_ROUGH = 5;
  private static final double LIGHT = 16; // in ln of a weight, below the heaviest
  private static final double WIDTH = 0.15; // of the differences for second derivatives

  /**
   * A set of hyperparameters with its weight.
   *
   * @param z its place, in prior standard deviations
   * @param newCover multiplier of a cover never logged
   * @param given what is known of the rates then
   */
  record Draw(double weight, double[] z, double newCover, Conditional given) {
    /** Multiplier of a cover, as in {@link RateFit.Term}. */
    double multiplier(int cover) {
      if (cover == Observation.MIX) {
        return 1;
      }
      return cover == Observation.NEVER_LOGGED ? newCover : given.hyper().multiplier[cover];
    }
  }

  /**
   * Finds the peak and weighs draws around it.
   *
   * @param count draws to weigh, even; 0 takes the peak alone
   */
  static HyperPosterior of(FitData data, int count) {
    int n = Hyper.COMMON + data.mix.length;
    ToDoubleFunction<double[]> log = logPosterior(data);
    double[] start = new double[n];
    start[0] = data.startOfRate();
    QuasiNewton.Peak peak =
        QuasiNewton.maximise(log, start, HyperSampler.diagonal(n, 0.5), NEAR, MOST_STEPS);
    if (count == 0) {
      HyperSampler.Point only = new HyperSampler.Point(peak.at(), 0, 0);
      return weigh(data, List.of(only)).found(peak, new double[0][], peak.converged());
    }
    double[][] precision = {};
    HyperPosterior weighed = null;
    if (peak.converged()) {
      precision = QuasiNewton.curvature(log, peak.at(), WIDTH);
      if (finite(precision)) {
        weighed = weigh(data, around(precision, peak, count));
      }
    }
    boolean found = weighed != null && weighed.effective >= FEWEST_EFFECTIVE;
    if (!found) {
      // Stated fallback: many draws from the prior, weighed by how well they explain the log.
      double[][] wide = HyperSampler.diagonal(n, 1);
      HyperPosterior prior = weigh(data, HyperSampler.points(wide, new double[n], 6 * count));
      weighed = weighed == null || prior.effective > weighed.effective ? prior : weighed;
    }
    return weighed.found(peak, precision, found);
  }

  /**
   * The same some trips later: a short climb from the old peak, and the old precision grown with
   * the log. Where the draws show that this does not fit, it is worked out anew.
   */
  HyperPosterior after(FitData grown, int count) {
    int n = Hyper.COMMON + grown.mix.length;
    if (!converged || n < peak.length) {
      return of(grown, count);
    }
    double[][] tight = grown(n, Math.max(1, grown.amount / amount));
    ToDoubleFunction<double[]> log = logPosterior(grown);
    double[][] guess = HyperSampler.covariance(HyperSampler.axes(tight));
    QuasiNewton.Peak top =
        QuasiNewton.maximise(log, Arrays.copyOf(peak, n), guess, ROUGHLY_NEAR, FEW_STEPS);
    if (Double.isFinite(top.value())) {
      HyperPosterior weighed = weigh(grown, around(tight, top, count));
      if (weighed.effective < ENOUGH_LEFT * count) {
        tight = QuasiNewton.curvature(log, top.at(), WIDTH);
        weighed = finite(tight) ? weigh(grown, around(tight, top, count)) : weighed;
      }
      if (weighed.effective >= FEWEST_ROUGH && finite(tight)) {
        return weighed.found(top, tight, true);
      }
    }
    return of(grown, count);
  }

  /** What came from data grows with the log, what came from the prior stays 1. */
  private double[][] grown(int dimensions, double growth) {
    double[][] grown = HyperSampler.diagonal(dimensions, 1);
    for (int i = 0; i < precision.length; i++) {
      for (int j = 0; j < precision.length; j++) {
        double own = i == j ? 1 : 0;
        grown[i][j] = own + growth * (precision[i][j] - own);
      }
    }
    return grown;
  }

  private static List<HyperSampler.Point> around(
      double[][] precision, QuasiNewton.Peak peak, int count) {
    return HyperSampler.points(HyperSampler.axes(precision), peak.at(), count);
  }

  private static boolean finite(double[][] matrix) {
    return Arrays.stream(matrix).flatMapToDouble(Arrays::stream).allMatch(Double::isFinite);
  }

  private HyperPosterior found(QuasiNewton.Peak peak, double[][] precision, boolean converged) {
    return new HyperPosterior(draws, effective, converged, peak.at(), precision, amount);
  }

  private static ToDoubleFunction<double[]> logPosterior(FitData data) {
    return z -> {
      Hyper hyper = Hyper.at(z, data.prior, data.mix, data.others);
      return new Conditional(data, hyper, false).logEvidence() + Hyper.logPrior(z);
    };
  }

  private static HyperPosterior weigh(FitData data, List<HyperSampler.Point> points) {
    List<Draw> tried = new ArrayList<>();
    double best = Double.NEGATIVE_INFINITY;
    for (HyperSampler.Point point : points) {
      Hyper hyper = Hyper.at(point.z(), data.prior, data.mix, data.others);
      Conditional given = new Conditional(data, hyper, true);
      double log = given.logEvidence() + Hyper.logPrior(point.z()) - point.logDensity();
      double newCover = Math.exp(data.prior.coverSpread() * point.newCover());
      tried.add(new Draw(log, point.z(), newCover, given));
      best = Math.max(best, log);
    }
    double top = best;
    // Draws of next to no weight are as dear as any other.
    tried.removeIf(draw -> draw.weight() < top - LIGHT);
    double sum = 0;
    double squares = 0;
    double newCovers = 0;
    for (Draw draw : tried) {
      double weight = Math.exp(draw.weight() - top);
      sum += weight;
      squares += weight * weight;
      newCovers += weight * draw.newCover();
    }
    List<Draw> kept = new ArrayList<>();
    for (Draw draw : tried) {
      double weight = Math.exp(draw.weight() - top) / sum;
      // A cover never logged has no effect on average, exactly: few draws must not shift it.
      kept.add(new Draw(weight, draw.z(), draw.newCover() * sum / newCovers, draw.given()));
    }
    return new HyperPosterior(
        kept, sum * sum / squares, true, new double[0], new double[0][], data.amount);
  }
}
