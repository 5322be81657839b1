package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sparewell.numerics.QuasiNewton;

/**
 * What a log tells of the hyperparameters: weighted draws, by importance sampling around the peak
 * of their posterior.
 */
final class HyperPosterior {
  private static final double PEAK = 1e-3;
  private static final double ROUGH_PEAK = 0.05;
  private static final int MOST_STEPS = 60;
  private static final int FEW_STEPS = 6;
  private static final double FEWEST_EFFECTIVE = 8;
  private static final double ENOUGH_LEFT = 0.25;
  private static final double FEWEST_ROUGH = 5;

  private final FitData data;
  private final Hyperprior prior;
  private final double[] peak;
  private final double[][] precision; // around the peak; empty where there is none
  private final int tried;
  private final List<Draw> draws;
  private final double effective;
  private final boolean converged;

  private HyperPosterior(
      FitData data,
      Hyperprior prior,
      QuasiNewton climb,
      double[][] precision,
      int tried,
      Weighed weighed,
      boolean converged) {
    this.data = data;
    this.prior = prior;
    this.peak = climb.at();
    this.precision = precision;
    this.tried = tried;
    Wander.Walked wander = Wander.walked(data, weighed.draws, prior);
    this.draws = weighed.draws.stream().map(draw -> draw.wandering(wander)).toList();
    this.effective = weighed.effective;
    this.converged = converged;
  }

  private record Weighed(List<Draw> draws, double effective) {}

  /**
   * Finds the peak and weighs draws around it.
   *
   * @param count draws to weigh, even; 0 takes the peak alone
   */
  static HyperPosterior of(FitData data, Hyperprior prior, int count) {
    int n = Hyper.COMMON + data.mix().length;
    ToDoubleFunction<double[]> log = logPosterior(data, prior);
    double[] start = new double[n];
    start[0] = data.startOfRate(prior);
    QuasiNewton climb = QuasiNewton.maximise(log, start, PEAK, MOST_STEPS);
    boolean found = climb.converged() && Double.isFinite(climb.value());
    double[][] precision = {};
    if (count == 0) {
      Hyper hyper = Hyper.at(climb.at(), prior, data.mix(), data.others());
      Draw only =
          new Draw(1, 1, new RatePosterior(data, hyper, true), Wander.Walked.none(data.styles()));
      return new HyperPosterior(
          data, prior, climb, precision, 0, new Weighed(List.of(only), 1), found);
    }
    Weighed weighed = null;
    if (found) {
      try {
        precision = HyperSampler.precision(log, climb.at());
        weighed =
            weigh(
                data, prior, HyperSampler.points(HyperSampler.axes(precision), climb.at(), count));
      } catch (ArithmeticException e) {
        found = false;
      }
    }
    if (weighed == null || weighed.effective < FEWEST_EFFECTIVE) {
      // Stated fallback: many draws from the prior, weighed by how well they explain the log.
      Weighed wide = weigh(data, prior, HyperSampler.priorPoints(n, 6 * count));
      if (weighed == null || wide.effective > weighed.effective) {
        weighed = wide;
      }
      found = found && weighed.effective >= FEWEST_EFFECTIVE;
    }
    return new HyperPosterior(data, prior, climb, precision, count, weighed, found);
  }

  /**
   * The same some trips later: a short climb from the old peak, and the old precision grown with
   * the log. Where the draws show that this does not fit, the precision is worked out anew.
   */
  HyperPosterior after(FitData grown) {
    int n = Hyper.COMMON + grown.mix().length;
    if (!converged || n < peak.length || precision.length == 0) {
      return of(grown, prior, tried);
    }
    double[][] tight =
        HyperSampler.grown(precision, n, Math.max(1, grown.amount() / data.amount()));
    double[][] axes = HyperSampler.axes(tight);
    ToDoubleFunction<double[]> log = logPosterior(grown, prior);
    QuasiNewton climb =
        QuasiNewton.maximise(
            log, Arrays.copyOf(peak, n), HyperSampler.covariance(axes), ROUGH_PEAK, FEW_STEPS);
    if (Double.isFinite(climb.value())) {
      Weighed weighed = weigh(grown, prior, HyperSampler.points(axes, climb.at(), tried));
      if (weighed.effective < ENOUGH_LEFT * tried) {
        try {
          tight = HyperSampler.precision(log, climb.at());
          weighed =
              weigh(grown, prior, HyperSampler.points(HyperSampler.axes(tight), climb.at(), tried));
        } catch (ArithmeticException e) {
          return of(grown, prior, tried);
        }
      }
      if (weighed.effective >= FEWEST_ROUGH) {
        return new HyperPosterior(grown, prior, climb, tight, tried, weighed, true);
      }
    }
    return of(grown, prior, tried);
  }

  private static ToDoubleFunction<double[]> logPosterior(FitData data, Hyperprior prior) {
    return z -> {
      Hyper hyper = Hyper.at(z, prior, data.mix(), data.others());
      if (!hyper.inRange()) {
        return Double.NEGATIVE_INFINITY;
      }
      return new RatePosterior(data, hyper, false).logEvidence() + Hyper.logPrior(z);
    };
  }

  private static Weighed weigh(FitData data, Hyperprior prior, List<HyperSampler.Point> points) {
    Wander.Walked staying = Wander.Walked.none(data.styles());
    List<Draw> tried = new ArrayList<>();
    double best = Double.NEGATIVE_INFINITY;
    for (HyperSampler.Point point : points) {
      Hyper hyper = Hyper.at(point.z(), prior, data.mix(), data.others());
      if (hyper.inRange()) {
        RatePosterior posterior = new RatePosterior(data, hyper, true);
        double log = posterior.logEvidence() + Hyper.logPrior(point.z()) - point.logDensity();
        if (Double.isFinite(log)) {
          double newCover = Math.exp(prior.coverSpread() * point.newCover());
          tried.add(new Draw(log, newCover, posterior, staying));
          best = Math.max(best, log);
        }
      }
    }
    double sum = 0;
    double squares = 0;
    double newCovers = 0;
    for (Draw draw : tried) {
      double weight = Math.exp(draw.weight() - best);
      sum += weight;
      squares += weight * weight;
      newCovers += weight * draw.newCover();
    }
    List<Draw> kept = new ArrayList<>();
    for (Draw draw : tried) {
      double weight = Math.exp(draw.weight() - best) / sum;
      if (weight > 1e-9) {
        // A cover never logged has no effect on average, exactly: few draws must not shift it.
        kept.add(new Draw(weight, draw.newCover() * sum / newCovers, draw.posterior(), staying));
      }
    }
    return new Weighed(List.copyOf(kept), sum * sum / squares);
  }

  /** What was fitted. */
  FitData data() {
    return data;
  }

  /** What was believed before. */
  Hyperprior prior() {
    return prior;
  }

  /** Those that carry weight; the weights sum to 1. */
  List<Draw> draws() {
    return draws;
  }

  /** Whether a peak was found and the draws around it carry the posterior. */
  boolean converged() {
    return converged;
  }

  /** How many equally weighted draws the weighted draws are worth. */
  double effectiveDraws() {
    return effective;
  }
}
