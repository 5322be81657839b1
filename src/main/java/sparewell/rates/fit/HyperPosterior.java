package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import sparewell.numerics.QuasiNewton;

/**
 * Posterior of the hyperparameters: weighted draws, by importance sampling around the peak of their
 * posterior.
 *
 * @param draws those that carry weight; the weights sum to 1
 * @param effective how many equally weighted draws they are worth
 * @param converged whether a peak was found and the draws around it carry the posterior
 * @param peak place of the peak, in prior standard deviations
 * @param precision minus the second derivatives there; empty where there is no peak
 */
record HyperPosterior(
    List<Draw> draws, double effective, boolean converged, double[] peak, double[][] precision) {
  private static final double NEAR = 1e-3; // gain left at which a climb ends, in ln of density
  private static final int MOST_STEPS = 60;
  private static final double FEWEST_EFFECTIVE = 8;
  private static final double FEWEST_ROUGH = 2;
  private static final double LONGEST = 3; // Newton step, in standard deviations
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
      return cover == Observation.NEVER_LOGGED ? newCover : given.hyper().multiplier()[cover];
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
      return weigh(data, List.of(only)).found(peak.at(), new double[0][], peak.converged());
    }
    double[][] precision = {};
    HyperPosterior weighed = null;
    if (peak.converged()) {
      precision = QuasiNewton.curvature(log, peak.at(), WIDTH);
      if (finite(precision)) {
        weighed = weigh(data, HyperSampler.points(HyperSampler.axes(precision), peak.at(), count));
      }
    }
    boolean found = weighed != null && weighed.effective >= FEWEST_EFFECTIVE;
    if (!found) {
      // Stated fallback: many draws from the prior, weighed by how well they explain the log.
      double[][] wide = HyperSampler.diagonal(n, 1);
      HyperPosterior prior = weigh(data, HyperSampler.points(wide, new double[n], 6 * count));
      weighed = weighed == null || prior.effective > weighed.effective ? prior : weighed;
    }
    return weighed.found(peak.at(), precision, found);
  }

  /** The prior alone, as a place to start from. */
  static HyperPosterior prior(FitData data) {
    double[] centre = new double[Hyper.COMMON + data.mix.length];
    centre[0] = data.startOfRate();
    Draw only = new Draw(1, centre, 1, null);
    double[][] precision = HyperSampler.diagonal(centre.length, 1);
    return new HyperPosterior(List.of(only), 1, true, centre, precision);
  }

  /**
   * The same some trips later: draws around a Newton step from the mean of these. Slopes and second
   * derivatives come from one difference along each variable; how variables hang together is kept.
   * Where the draws do not carry the posterior, it is worked out anew.
   */
  HyperPosterior after(FitData grown, int count) {
    int n = Hyper.COMMON + grown.mix.length;
    if (!converged || n < peak.length) {
      return of(grown, count);
    }
    ToDoubleFunction<double[]> log = logPosterior(grown);
    double[] centre = mean(n);
    double here = log.applyAsDouble(centre);
    double[] slope = new double[n];
    double[] sharper = new double[n];
    for (int i = 0; i < n; i++) {
      double[] beside = centre.clone();
      beside[i] += WIDTH;
      double up = log.applyAsDouble(beside);
      beside[i] -= 2 * WIDTH;
      double down = log.applyAsDouble(beside);
      slope[i] = (up - down) / (2 * WIDTH);
      double curvature = Math.max(0.6, (2 * here - up - down) / (WIDTH * WIDTH));
      sharper[i] = Math.sqrt(curvature / before(i, i));
    }
    double[][] tight = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        tight[i][j] = before(i, j) * sharper[i] * sharper[j];
      }
    }
    double[][] axes = HyperSampler.axes(tight);
    RealMatrix root = new Array2DRowRealMatrix(axes);
    RealVector step = root.operate(root.operate(new ArrayRealVector(slope)));
    double widths = Math.sqrt(step.dotProduct(new ArrayRealVector(slope)));
    step.mapMultiplyToSelf(Math.min(1, LONGEST / Math.max(widths, LONGEST)));
    centre = step.add(new ArrayRealVector(centre)).toArray();
    HyperPosterior weighed = weigh(grown, HyperSampler.points(axes, centre, count));
    if (weighed.effective < FEWEST_ROUGH) {
      centre = weighed.mean(n);
      weighed = weigh(grown, HyperSampler.points(axes, centre, count));
    }
    return weighed.effective < FEWEST_ROUGH ? of(grown, count) : weighed.found(centre, tight, true);
  }

  /** The old precision; that of the prior where a cover is new. */
  private double before(int i, int j) {
    return i < peak.length && j < peak.length ? precision[i][j] : i == j ? 1 : 0;
  }

  private double[] mean(int n) {
    double[] mean = new double[n];
    for (Draw draw : draws) {
      for (int i = 0; i < draw.z().length; i++) {
        mean[i] += draw.weight() * draw.z()[i];
      }
    }
    return mean;
  }

  /**
   * These with their weights multiplied.
   *
   * @param chance of what was learnt, at each draw
   */
  HyperPosterior learning(double[] chance) {
    double sum = 0;
    for (int d = 0; d < chance.length; d++) {
      sum += draws.get(d).weight() * chance[d];
    }
    if (!(sum > 0)) {
      return this;
    }
    List<Draw> learnt = new ArrayList<>();
    double squares = 0;
    for (int d = 0; d < chance.length; d++) {
      Draw draw = draws.get(d);
      double weight = draw.weight() * chance[d] / sum;
      squares += weight * weight;
      learnt.add(new Draw(weight, draw.z(), draw.newCover(), draw.given()));
    }
    return new HyperPosterior(learnt, 1 / squares, converged, peak, precision);
  }

  private static boolean finite(double[][] matrix) {
    return Arrays.stream(matrix).flatMapToDouble(Arrays::stream).allMatch(Double::isFinite);
  }

  private HyperPosterior found(double[] peak, double[][] precision, boolean converged) {
    return new HyperPosterior(draws, effective, converged, peak, precision);
  }

  private static ToDoubleFunction<double[]> logPosterior(FitData data) {
    return z -> {
      Hyper hyper = Hyper.at(z, data.prior, data.mix, data.others);
      return new Conditional(data, hyper).logEvidence() + Hyper.logPrior(z);
    };
  }

  private static HyperPosterior weigh(FitData data, List<HyperSampler.Point> points) {
    List<Draw> tried = new ArrayList<>();
    double best = Double.NEGATIVE_INFINITY;
    for (HyperSampler.Point point : points) {
      Hyper hyper = Hyper.at(point.z(), data.prior, data.mix, data.others);
      Conditional given = new Conditional(data, hyper);
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
    return new HyperPosterior(kept, sum * sum / squares, true, new double[0], new double[0][]);
  }
}
