package sparewell.rates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;
import sparewell.numerics.CountDistribution;
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

  private static final double LEAST_CELL = 1e-8;

  private final FitInput input;
  private final HyperPosterior hyper;
  private final List<Map<List<Term>, CountDistribution>> known = new ArrayList<>();

  /** One stretch of use: hours, days, and the number of the cover. */
  public record Term(double hours, double days, int cover) {}

  /** Estimate and interval of a positive quantity. */
  public record Estimate(double mean, double low90, double high90) {}

  private RateFit(FitInput input, HyperPosterior hyper) {
    this.input = input;
    this.hyper = hyper;
    for (int s = 0; s < input.styles(); s++) {
      known.add(new LinkedHashMap<>());
    }
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
    return new RateFit(input, HyperPosterior.of(new FitData(input), prior, draws));
  }

  /** Whether a peak was found and the draws around it carry the posterior. */
  public boolean converged() {
    return hyper.converged();
  }

  /** How many equally weighted draws the weighted draws are worth. */
  public double effectiveDraws() {
    return hyper.effectiveDraws();
  }

  /** What was fitted. */
  public FitInput input() {
    return input;
  }

  List<Draw> draws() {
    return hyper.draws();
  }

  /** The rate of a style per hour at the mix of covers, with its 90 % interval. */
  public Estimate rate(int style) {
    WeightedCells cells = new WeightedCells();
    double mean = 0;
    for (Draw draw : hyper.draws()) {
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
        } else if (nodes.tail().weight() > 0) {
          double low = 2 * (nodes.tail().logRate() - Math.log(nodes.rate(0)));
          cells.add(nodes.tail().logRate(), Math.abs(low), weight);
        }
      }
    }
    return new Estimate(mean, Math.exp(cells.quantile(0.05)), Math.exp(cells.quantile(0.95)));
  }

  /** The multiplier of a cover, with its 90 % interval. */
  public Estimate multiplier(int cover) {
    WeightedCells cells = new WeightedCells();
    double mean = 0;
    for (Draw draw : hyper.draws()) {
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
    if (hyper.data().history(style).empty()) {
      return 0;
    }
    double given = 0;
    double without = 0;
    for (Draw draw : hyper.draws()) {
      given += draw.weight() * draw.posterior().logVariance(style);
      without += draw.weight() * Gamma.trigamma(draw.posterior().hyper().shape);
    }
    return Math.max(0, Math.min(1, 1 - given / without));
  }

  /** Pieces of a style lost over all the terms together. */
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
  CountDistribution shared(int style, List<List<Term>> groups, double own, List<Double> rests) {
    if (rests.stream().allMatch(rest -> rest == 0)) {
      return losses(style, groups.stream().flatMap(List::stream).toList());
    }
    return LossPrediction.shared(hyper.draws(), style, groups, own, rests);
  }
}
