package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.special.Gamma;
import sparewell.numerics.CountDistribution;

/**
 * The fitted hierarchy of loss rates: hyperparameters as weighted draws, rates as weighted points
 * within each.
 *
 * <p>y ~ NegBin(mean h &lambda; m, size &kappa; days); &lambda; ~ Gamma(shape a, mean &mu;) within
 * a family; ln &mu; ~ N(ln &mu;0, &tau;&sup2;); ln m ~ N(0, 0.5&sup2;). Family means and rates are
 * integrated by quadrature, hyperparameters by importance sampling around the peak of their
 * posterior. From the mean over the log to the next trip, &lambda; walks at random, as {@link
 * Wander} has it.
 */
public final class RateFit {
  /** Draws of an ordinary fit. */
  public static final int DRAWS = 160;

  private final FitInput input;
  private final HyperPosterior hyper;
  private final List<Map<List<Term>, CountDistribution>> known = new ArrayList<>(); // by style

  /**
   * One stretch of use.
   *
   * @param hours hours the style is thrown, &ge; 0
   * @param days days they are spread over, &gt; 0
   * @param cover number of the cover, {@link Observation#MIX} or {@link Observation#NEVER_LOGGED}
   * @param stepsAhead trips from the last one logged, &ge; 1
   */
  public record Term(double hours, double days, int cover, int stepsAhead) {
    /** On the next trip. */
    public Term(double hours, double days, int cover) {
      this(hours, days, cover, 1);
    }
  }

  /**
   * Estimate and interval of a positive quantity, in its unit.
   *
   * @param mean posterior mean
   * @param low90 5 % point
   * @param high90 95 % point
   */
  public record Estimate(double mean, double low90, double high90) {}

  private RateFit(FitInput input, HyperPosterior hyper) {
    this.input = input;
    this.hyper = hyper;
    for (int s = 0; s < input.styles(); s++) {
      known.add(new ConcurrentHashMap<>());
    }
  }

  /** Much history leaves little doubt of the hyperparameters, so fewer draws tell as much. */
  private static int draws(int observations) {
    return observations <= 2_000 ? DRAWS : observations <= 4_000 ? 96 : 64;
  }

  /** Fits under the weak prior, {@link Hyperprior#WEAK}. */
  public static RateFit of(FitInput input) {
    return of(input, Hyperprior.WEAK, draws(input.observations().size()));
  }

  /**
   * Fits. Equal input gives equal output.
   *
   * @param input what was logged; may be empty
   * @param prior of the hyperparameters
   * @param draws sets of hyperparameters to weigh, even; 0 takes the peak of their posterior alone
   */
  public static RateFit of(FitInput input, Hyperprior prior, int draws) {
    return of(input, prior, Beliefs.NONE, draws);
  }

  /**
   * Fits beside what other logs tell.
   *
   * @param prior of the hyperparameters, in the light of the other logs
   * @param others what these tell of rates and covers
   */
  public static RateFit of(FitInput input, Hyperprior prior, Beliefs others, int draws) {
    return new RateFit(input, HyperPosterior.of(new FitData(input, false, others), prior, draws));
  }

  /** Whether a peak was found and the draws around it carry the posterior. */
  public boolean converged() {
    return hyper.converged();
  }

  /** How many equally weighted draws the weighted draws are worth, from 1. */
  double effectiveDraws() {
    return hyper.effectiveDraws();
  }

  /** What was fitted. */
  public FitInput input() {
    return input;
  }

  /**
   * How many trips beyond the next one a rate has walked on average over the terms: the variance of
   * the mean of a random walk, each term by its hours, in those of one step.
   */
  static double stepsBeyond(List<Term> terms) {
    double hours = 0;
    double product = 0;
    for (Term one : terms) {
      hours += one.hours();
      for (Term other : terms) {
        product += one.hours() * other.hours() * Math.min(one.stepsAhead(), other.stepsAhead());
      }
    }
    return hours > 0 ? Math.max(0, product / (hours * hours) - 1) : 0;
  }

  /** Weighted sets of hyperparameters with what is known of the rates given them. */
  List<Draw> draws() {
    return hyper.draws();
  }

  /**
   * The rate of a style per hour on the next trip at the mix of covers, with its 90 % interval,
   * whose ends are right to about 0.2 % of the rate, given the draws.
   */
  public Estimate rate(int style) {
    return Estimates.rate(hyper.draws(), style);
  }

  /**
   * What a cover multiplies rates with, relative to the mix of covers logged, with its 90 %
   * interval.
   *
   * @param cover as in {@link Term}
   */
  public Estimate multiplier(int cover) {
    return Estimates.multiplier(hyper.draws(), cover);
  }

  /**
   * Share of a style's rate that comes from its own history: 1 less the variance of the log rate
   * given its data and its family, over that without its data, &psi;'(a); beside other logs, where
   * a style is a family of its own, the variance of the family's mean counts on both sides. From 0
   * to 1; 0 without data.
   */
  public double ownShare(int style) {
    if (hyper.data().history(style).empty()) {
      return 0;
    }
    double given = 0;
    for (Draw draw : hyper.draws()) {
      given +=
          draw.weight()
              * (beside()
                  ? draw.posterior().wholeLogVariance(style)
                  : draw.posterior().logVariance(style));
    }
    return Math.max(0, Math.min(1, 1 - given / priorVariance(style)));
  }

  /**
   * Variance of a style's log rate before its own data, given its family; beside other logs, before
   * any data of this log.
   */
  public double priorVariance(int style) {
    double without = 0;
    int family = input.familyOfStyle().get(style);
    for (Draw draw : hyper.draws()) {
      Hyper at = draw.posterior().hyper();
      double mean = beside() ? hyper.data().others().familySpread(family, at.familySpread) : 0;
      without += draw.weight() * (Gamma.trigamma(at.shape) + mean * mean);
    }
    return without;
  }

  /** Whether other logs are known. */
  private boolean beside() {
    return hyper.data().others().known();
  }

  /** What was logged. */
  FitData data() {
    return hyper.data();
  }

  /** The prior of the hyperparameters. */
  Hyperprior prior() {
    return hyper.prior();
  }

  /**
   * Pieces of a style lost over all the terms together, as {@link LossPrediction} has it; kept, as
   * the same is asked for again and again.
   */
  public CountDistribution losses(int style, List<Term> terms) {
    List<Term> used = terms.stream().filter(term -> term.hours() > 0).toList();
    if (used.isEmpty()) {
      return CountDistribution.none();
    }
    return known
        .get(style)
        .computeIfAbsent(used, key -> LossPrediction.whole(hyper.draws(), style, key));
  }

  /**
   * Pieces of an item lost over groups of terms, where the item has a share in each group that is
   * Beta(own, rest of the group) and the shares rise and fall together.
   *
   * @param own Dirichlet parameter of the item, &gt; 0
   * @param rests those of the other items of each group together, &ge; 0
   */
  public CountDistribution shared(
      int style, List<List<Term>> groups, double own, List<Double> rests) {
    if (rests.stream().allMatch(rest -> rest == 0)) {
      return losses(style, groups.stream().flatMap(List::stream).toList());
    }
    return LossPrediction.shared(hyper.draws(), style, groups, own, rests);
  }
}
