package sparewell.rates;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BetaDistribution;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;
import sparewell.numerics.QuasiNewton;
import sparewell.numerics.WeightedCells;

/**
 * The fitted hierarchy of loss rates: hyperparameters as weighted draws, rates as weighted points
 * within each.
 *
 * <p>y ~ NegBin(mean h &lambda; m, size &kappa; days); &lambda; ~ Gamma(shape a, mean &mu;) within
 * a family; ln &mu; ~ N(ln &mu;0, &tau;&sup2;); ln m ~ N(0, 0.5&sup2;). Family means and rates are
 * integrated by quadrature, hyperparameters by importance sampling around the peak of their
 * posterior.
 */
public final class RateFit {
  /** Draws of an ordinary fit. */
  public static final int DRAWS = 160;

  private static final double LEAST_CELL = 1e-10;
  private static final int SHARE_POINTS = 16;
  // Points of less weight are left out of distributions: together under 1e-6, far below the
  // sampling error of the draws.
  private static final double WEIGHT_FLOOR = 1e-10;
  private static final double ENOUGH_LEFT = 0.4;
  private static final double ROUGH_PEAK = 0.05;
  private static final double ROUGH_TAIL = 1e-5;
  private static final double FEWEST_ROUGH = 5;
  private static final double FEWEST_EFFECTIVE = 8;

  private final FitInput input;
  private final Hyperprior prior;
  private final List<Draw> draws;
  private final double[] peak;
  private final boolean converged;
  private final int iterations;
  private final double effectiveDraws;
  private final List<HyperSampler.Point> points;
  private final Optional<double[][]> axes; // around the peak, where there are any
  private final boolean rough; // distributions from few points, for the replay
  private final Map<List<Term>, CountDistribution>[] known;
  private final Map<Integer, Map<Draw, RatePoints>> roughPoints = new LinkedHashMap<>();

  /** One stretch of use: hours, days, and the number of the cover. */
  public record Term(double hours, double days, int cover) {}

  /** Estimate and interval of a positive quantity. */
  public record Estimate(double mean, double low90, double high90) {}

  private RateFit(
      FitInput input,
      Hyperprior prior,
      double[] peak,
      boolean converged,
      int iterations,
      Weighed weighed,
      Optional<double[][]> axes,
      boolean rough) {
    this.input = input;
    this.prior = prior;
    this.draws = weighed.draws;
    this.points = weighed.points;
    this.axes = axes;
    this.peak = peak;
    this.converged = converged;
    this.iterations = iterations;
    this.effectiveDraws = weighed.effective;
    this.rough = rough;
    @SuppressWarnings({"unchecked", "rawtypes"})
    Map<List<Term>, CountDistribution>[] maps = new Map[input.styles()];
    this.known = maps;
  }

  /** Much history leaves little doubt of the hyperparameters, so fewer draws tell as much. */
  private static int draws(int observations) {
    return observations <= 2_000 ? DRAWS : observations <= 4_000 ? 96 : 64;
  }

  /** Fits under the weak prior. */
  public static RateFit of(FitInput input) {
    return of(input, Hyperprior.WEAK, draws(input.observations().size()));
  }

  /**
   * Fits.
   *
   * @param draws sets of hyperparameters to weigh, even; 0 takes the peak of their posterior alone
   */
  public static RateFit of(FitInput input, Hyperprior prior, int draws) {
    return of(input, prior, draws, false);
  }

  /** A fit for the replay, whose distributions come from few points for each draw. */
  static RateFit rough(FitInput input, int draws) {
    return of(input, Hyperprior.WEAK, draws, true);
  }

  private static RateFit of(FitInput input, Hyperprior prior, int draws, boolean rough) {
    FitData data = new FitData(input);
    int n = Hyper.COMMON + input.covers();
    ToDoubleFunction<double[]> logPosterior = logPosterior(data, prior);
    QuasiNewton climb = QuasiNewton.maximise(logPosterior, start(input, prior, n), 1e-3, 60);
    double[] peak = climb.at();
    boolean found = climb.converged() && Double.isFinite(climb.value());
    if (draws == 0) {
      Draw only = new Draw(1, 1, new RatePosterior(data, Hyper.at(peak, prior, data.mix()), true));
      Weighed sole = new Weighed(List.of(only), 1, List.of());
      return new RateFit(
          input, prior, peak, found, climb.iterations(), sole, Optional.empty(), rough);
    }
    Weighed weighed = null;
    Optional<double[][]> axes = Optional.empty();
    if (found) {
      try {
        double[][] steepness = HyperSampler.axes(logPosterior, peak);
        axes = Optional.of(steepness);
        weighed = weigh(data, prior, HyperSampler.points(steepness, peak, draws));
      } catch (ArithmeticException e) {
        found = false;
      }
    }
    if (weighed == null || weighed.effective < FEWEST_EFFECTIVE) {
      // Stated fallback: many draws from the prior, weighed by how well they explain the log.
      Weighed wide = weigh(data, prior, HyperSampler.priorPoints(n, 6 * draws));
      if (weighed == null || wide.effective > weighed.effective) {
        weighed = wide;
      }
      found = found && weighed.effective >= FEWEST_EFFECTIVE;
    }
    return new RateFit(input, prior, peak, found, climb.iterations(), weighed, axes, rough);
  }

  /**
   * The fit of the same season some trips later: the draws of this one weighed anew, which is exact
   * up to the same sampling error, and new ones where too few of them still carry weight.
   *
   * @param grown the input then
   * @see "Chopin, A sequential particle filter method for static models, Biometrika 89 (2002), from
   *     memory"
   */
  RateFit after(FitInput grown) {
    int n = Hyper.COMMON + grown.covers();
    if (converged && n == peak.length && !points.isEmpty()) {
      Weighed again = weigh(new FitData(grown), prior, points);
      if (again.effective >= ENOUGH_LEFT * points.size()) {
        return new RateFit(grown, prior, peak, true, 0, again, axes, true);
      }
    }
    int count = points.isEmpty() ? DRAWS : points.size();
    if (converged && n == peak.length && !axes.isEmpty()) {
      FitData data = new FitData(grown);
      double[][] old = axes.get();
      ToDoubleFunction<double[]> log = logPosterior(data, prior);
      QuasiNewton climb =
          QuasiNewton.maximise(log, peak, HyperSampler.covariance(old), ROUGH_PEAK, 6);
      if (Double.isFinite(climb.value())) {
        double[][] spread = old;
        Weighed again = weigh(data, prior, HyperSampler.points(spread, climb.at(), count));
        if (again.effective < 0.3 * count) {
          try {
            spread = HyperSampler.axes(log, climb.at());
            again = weigh(data, prior, HyperSampler.points(spread, climb.at(), count));
          } catch (ArithmeticException e) {
            spread = old; // no curvature to be had there: what the old one gave may still do
          }
        }
        if (again.effective >= FEWEST_ROUGH) {
          return new RateFit(
              grown, prior, climb.at(), true, climb.iterations(), again, Optional.of(spread), true);
        }
      }
    }
    return of(grown, prior, count, true);
  }

  private static ToDoubleFunction<double[]> logPosterior(FitData data, Hyperprior prior) {
    return z -> {
      Hyper hyper = Hyper.at(z, prior, data.mix());
      if (!hyper.inRange()) {
        return Double.NEGATIVE_INFINITY;
      }
      return new RatePosterior(data, hyper, false).logEvidence() + Hyper.logPrior(z);
    };
  }

  /** The prior's centre, moved to the rate of all styles together. */
  private static double[] start(FitInput input, Hyperprior prior, int dimensions) {
    double lost = 0.5;
    double hours = 0.5 / Math.exp(prior.logRateCentre());
    for (Observation observation : input.observations()) {
      if (observation.lostPieces() > 0 || !observation.atLeast()) {
        lost += observation.weight() * observation.lostPieces();
        hours += observation.weight() * observation.hours();
      }
    }
    double[] start = new double[dimensions];
    start[0] = (Math.log(lost / hours) - prior.logRateCentre()) / prior.logRateSpread();
    return start;
  }

  private record Weighed(List<Draw> draws, double effective, List<HyperSampler.Point> points) {}

  private static Weighed weigh(FitData data, Hyperprior prior, List<HyperSampler.Point> points) {
    List<Draw> tried = new ArrayList<>();
    double best = Double.NEGATIVE_INFINITY;
    for (HyperSampler.Point point : points) {
      Hyper hyper = Hyper.at(point.z(), prior, data.mix());
      if (hyper.inRange()) {
        RatePosterior posterior = new RatePosterior(data, hyper, true);
        double log = posterior.logEvidence() + Hyper.logPrior(point.z()) - point.logDensity();
        if (Double.isFinite(log)) {
          double spread = prior.coverSpread();
          double newCover = Math.exp(spread * point.newCover() - spread * spread / 2);
          tried.add(new Draw(log, newCover, posterior));
          best = Math.max(best, log);
        }
      }
    }
    double sum = 0;
    double squares = 0;
    for (Draw draw : tried) {
      double weight = Math.exp(draw.weight() - best);
      sum += weight;
      squares += weight * weight;
    }
    List<Draw> kept = new ArrayList<>();
    for (Draw draw : tried) {
      double weight = Math.exp(draw.weight() - best) / sum;
      if (weight > 1e-9) {
        kept.add(new Draw(weight, draw.newCover(), draw.posterior()));
      }
    }
    return new Weighed(List.copyOf(kept), sum * sum / squares, points);
  }

  /** Whether a peak was found and the draws around it carry the posterior. */
  public boolean converged() {
    return converged;
  }

  /** Steps taken to the peak. */
  public int iterations() {
    return iterations;
  }

  /** How many equally weighted draws the weighted draws are worth. */
  public double effectiveDraws() {
    return effectiveDraws;
  }

  /** What was fitted. */
  public FitInput input() {
    return input;
  }

  /** Size of a day's extra variation at the peak. */
  public double peakSize() {
    return peakHyper().size;
  }

  /** Shape of the distribution of rates within a family at the peak. */
  public double peakShape() {
    return peakHyper().shape;
  }

  private Hyper peakHyper() {
    return Hyper.at(peak, prior, input.mix());
  }

  List<Draw> draws() {
    return draws;
  }

  /** The rate of a style per hour at the mix of covers, with its 90 % interval. */
  public Estimate rate(int style) {
    WeightedCells cells = new WeightedCells();
    double mean = 0;
    for (Draw draw : draws) {
      RateNodes nodes = draw.posterior().nodes(style);
      double[] weights = draw.posterior().weights(style);
      double first = Math.log(nodes.rate(0));
      for (int i = 0; i < weights.length; i++) {
        double weight = draw.weight() * weights[i];
        mean += weight * draw.posterior().rate(style, i);
        if (weight < LEAST_CELL) {
          continue;
        }
        if (i < nodes.count()) {
          cells.add(first + i * nodes.step(), nodes.step(), weight);
        } else if (nodes.hasTail()) {
          double low = 2 * (nodes.tailLogRate() - Math.log(nodes.rate(0)));
          cells.add(nodes.tailLogRate(), Math.abs(low), weight);
        }
      }
    }
    return new Estimate(mean, Math.exp(cells.quantile(0.05)), Math.exp(cells.quantile(0.95)));
  }

  /** The multiplier of a cover, with its 90 % interval. */
  public Estimate multiplier(int cover) {
    WeightedCells cells = new WeightedCells();
    double mean = 0;
    for (Draw draw : draws) {
      mean += draw.weight() * draw.multiplier(cover);
      cells.add(Math.log(draw.multiplier(cover)), 0.05, draw.weight());
    }
    return new Estimate(mean, Math.exp(cells.quantile(0.05)), Math.exp(cells.quantile(0.95)));
  }

  /**
   * Share of a style's rate that comes from its own history: 1 less the variance of the log rate
   * given its data and its family, over that without its data.
   */
  public double ownShare(int style) {
    if (input.observations().stream().noneMatch(o -> o.style() == style)) {
      return 0;
    }
    double given = 0;
    double without = 0;
    for (Draw draw : draws) {
      given += draw.weight() * draw.posterior().logVariance(style);
      without +=
          draw.weight()
              * org.apache.commons.math3.special.Gamma.trigamma(draw.posterior().hyper().shape);
    }
    return Math.max(0, Math.min(1, 1 - given / without));
  }

  /** Pieces of a style lost over all the terms together. */
  public CountDistribution losses(int style, List<Term> terms) {
    List<Term> used = terms.stream().filter(term -> term.hours() > 0).toList();
    if (used.isEmpty()) {
      return CountDistribution.none();
    }
    if (known[style] == null) {
      known[style] = new LinkedHashMap<>();
    }
    return known[style].computeIfAbsent(used, key -> mixture(style, key));
  }

  private CountDistribution mixture(int style, List<Term> terms) {
    double[] whole = new double[terms.size()];
    java.util.Arrays.fill(whole, 1);
    return mixture(style, terms, List.of(whole));
  }

  /**
   * Pieces of an item lost over groups of terms, where the item has a share in each group that is
   * Beta(own, rest of the group) and the shares rise and fall together.
   *
   * @param rests one for each group, &ge; 0
   */
  public CountDistribution shared(
      int style, List<List<Term>> groups, double own, List<Double> rests) {
    List<Term> terms = groups.stream().flatMap(List::stream).toList();
    List<double[]> factors = new ArrayList<>();
    for (int k = 0; k < SHARE_POINTS; k++) {
      factors.add(new double[terms.size()]);
    }
    int first = 0;
    for (int g = 0; g < groups.size(); g++) {
      double[] points = sharePoints(own, rests.get(g));
      for (int e = first; e < first + groups.get(g).size(); e++) {
        for (int k = 0; k < SHARE_POINTS; k++) {
          factors.get(k)[e] = points[k];
        }
      }
      first += groups.get(g).size();
    }
    return mixture(style, terms, factors);
  }

  /** Equally likely points of a Beta variable, with its mean. */
  private static double[] sharePoints(double own, double rest) {
    double[] points = new double[SHARE_POINTS];
    if (rest == 0) {
      java.util.Arrays.fill(points, 1);
      return points;
    }
    BetaDistribution beta = new BetaDistribution(null, own, rest, 1e-10);
    double sum = 0;
    for (int k = 0; k < SHARE_POINTS; k++) {
      points[k] = beta.inverseCumulativeProbability((k + 0.5) / SHARE_POINTS);
      sum += points[k];
    }
    for (int k = 0; k < SHARE_POINTS; k++) {
      points[k] *= own / (own + rest) * SHARE_POINTS / sum;
    }
    return points;
  }

  private CountDistribution mixture(int style, List<Term> terms, List<double[]> factors) {
    CountMixture mixture =
        rough ? new CountMixture(terms.size(), ROUGH_TAIL) : new CountMixture(terms.size());
    double[] means = new double[terms.size()];
    double[] sizes = new double[terms.size()];
    for (Draw draw : draws) {
      RatePoints points = points(draw, style);
      for (int e = 0; e < sizes.length; e++) {
        sizes[e] = draw.posterior().hyper().size * terms.get(e).days();
      }
      for (int i = 0; i < points.count(); i++) {
        double weight = draw.weight() * points.weight(i);
        if (weight > WEIGHT_FLOOR) {
          for (double[] factor : factors) {
            for (int e = 0; e < means.length; e++) {
              Term term = terms.get(e);
              means[e] = factor[e] * points.rate(i) * term.hours() * draw.multiplier(term.cover());
            }
            mixture.add(weight / factors.size(), means, sizes);
          }
        }
      }
    }
    return mixture.distribution();
  }

  private RatePoints points(Draw draw, int style) {
    return rough
        ? roughPoints
            .computeIfAbsent(style, number -> new IdentityHashMap<>())
            .computeIfAbsent(draw, key -> RatePoints.of(draw, style, true))
        : RatePoints.of(draw, style, false);
  }

  /** Numbers 0, 1, ... of the styles. */
  IntStream styles() {
    return IntStream.range(0, input.styles());
  }
}
