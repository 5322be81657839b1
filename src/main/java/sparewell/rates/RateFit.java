package sparewell.rates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.BetaDistribution;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;
import sparewell.numerics.GaussNodes;
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
  private static final int SHARE_NODES = 12;
  // Points of less weight are left out of distributions: together under 1e-6, far below the
  // sampling error of the draws.
  private static final double WEIGHT_FLOOR = 1e-10;

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

  /** Steps taken to the peak. */
  public int iterations() {
    return hyper.iterations();
  }

  /** How many equally weighted draws the weighted draws are worth. */
  public double effectiveDraws() {
    return hyper.effectiveDraws();
  }

  /** What was fitted. */
  public FitInput input() {
    return input;
  }

  /** Size of a day's extra variation at the peak. */
  public double peakSize() {
    return hyper.peak().size;
  }

  /** Shape of the distribution of rates within a family at the peak. */
  public double peakShape() {
    return hyper.peak().shape;
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
    return known.get(style).computeIfAbsent(used, key -> mixture(style, key));
  }

  private CountDistribution mixture(int style, List<Term> terms) {
    double[] whole = new double[terms.size()];
    java.util.Arrays.fill(whole, 1);
    return mixture(style, terms, new double[][] {whole}, new double[] {1});
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
    double some = rests.stream().filter(rest -> rest > 0).findFirst().orElse(0.0);
    if (some == 0) {
      return losses(style, terms);
    }
    List<GaussNodes.Node> nodes = GaussNodes.ofBeta(SHARE_NODES, own, some);
    double[] chances = nodes.stream().mapToDouble(GaussNodes.Node::weight).toArray();
    double[][] factors = new double[SHARE_NODES][terms.size()];
    int first = 0;
    for (int g = 0; g < groups.size(); g++) {
      double[] share = shares(nodes, own, some, rests.get(g));
      for (int e = first; e < first + groups.get(g).size(); e++) {
        for (int k = 0; k < SHARE_NODES; k++) {
          factors[k][e] = share[k];
        }
      }
      first += groups.get(g).size();
    }
    return mixture(style, terms, factors, chances);
  }

  /** The shares at the same quantiles as the nodes, moved so that their mean is right. */
  private static double[] shares(
      List<GaussNodes.Node> nodes, double own, double some, double rest) {
    double[] shares = nodes.stream().mapToDouble(GaussNodes.Node::x).toArray();
    if (rest == 0) {
      java.util.Arrays.fill(shares, 1);
    } else if (rest != some) {
      BetaDistribution from = new BetaDistribution(null, own, some, 1e-10);
      BetaDistribution to = new BetaDistribution(null, own, rest, 1e-10);
      double mean = 0;
      for (int k = 0; k < shares.length; k++) {
        shares[k] = to.inverseCumulativeProbability(from.cumulativeProbability(shares[k]));
        mean += nodes.get(k).weight() * shares[k];
      }
      for (int k = 0; k < shares.length; k++) {
        shares[k] *= own / (own + rest) / mean;
      }
    }
    return shares;
  }

  private CountDistribution mixture(
      int style, List<Term> terms, double[][] factors, double[] chances) {
    CountMixture mixture = new CountMixture(terms.size());
    double[] means = new double[terms.size()];
    double[] sizes = new double[terms.size()];
    for (Draw draw : hyper.draws()) {
      double[] weights = draw.posterior().weights(style);
      for (int e = 0; e < sizes.length; e++) {
        sizes[e] = draw.posterior().hyper().size * terms.get(e).days();
      }
      for (int i = 0; i < weights.length; i++) {
        double weight = draw.weight() * weights[i];
        if (weight > WEIGHT_FLOOR) {
          double rate = draw.posterior().rate(style, i);
          for (int k = 0; k < factors.length; k++) {
            for (int e = 0; e < means.length; e++) {
              Term term = terms.get(e);
              means[e] = factors[k][e] * rate * term.hours() * draw.multiplier(term.cover());
            }
            mixture.add(weight * chances[k], means, sizes);
          }
        }
      }
    }
    return mixture.distribution();
  }
}
