package sparewell.rates.fit;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.special.Gamma;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;

/**
 * The fitted hierarchy of loss rates, as weights over (rate, draw): hyperparameters are weighted
 * draws, and at each draw a style's log rate has weights on one grid. Every answer is a sum over
 * these weights.
 *
 * <p>y ~ NegBin(mean h &lambda; m, size &kappa; days); &lambda; ~ Gamma(shape a, mean &mu;) within
 * a family; ln &mu; ~ N(ln &mu;0, &tau;&sup2;); ln m ~ N(0, 0.5&sup2;). Family means and rates are
 * summed over the grid ({@link FitData}, {@link Conditional}), hyperparameters over draws around
 * the peak of their posterior ({@link HyperPosterior}). From the mean over the log to the trips
 * ahead, ln &lambda; is a {@link RandomWalk}. Sampling the hyperparameters with 160 draws leaves
 * about 0.001 of error in a chance and 1 % in a rate; all sums behind it are kept well below that.
 *
 * @see "Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 5 and 10.4"
 */
public final class RateFit {
  /** Draws of an ordinary fit. */
  public static final int DRAWS = 160;

  /** Fewer draws are themselves right to a hundredth: what is left out may then be more. */
  static final int FEW_DRAWS = 48;

  private static final int SHARE_NODES = 8;
  private static final GaussIntegratorFactory NODES = new GaussIntegratorFactory();
  private static final double SPENT = 1e-5; // weight of a draw that learns no more
  private static final double FAINT = 1e-7; // weight of a part of a mixture that does not count
  private static final double TAIL = 1e-6; // of counts that is left out
  private static final double ROUGH = 1e-4; // the same of both, of few draws

  private final FitInput input;
  private final FitData data;
  private final HyperPosterior hyper;
  private final RandomWalk walk;
  private final Map<Integer, double[][]> rows; // by style
  private final Map<Asked, CountDistribution> known = new ConcurrentHashMap<>();
  private final Map<List<Double>, double[]> quantiles = new ConcurrentHashMap<>(); // of shares
  private final Map<Asked, Stretch> stretches = new ConcurrentHashMap<>();

  private record Asked(int style, List<Term> terms) {}

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

  private RateFit(FitInput input, FitData data, HyperPosterior hyper) {
    this.input = input;
    this.data = data;
    this.hyper = hyper;
    rows = new ConcurrentHashMap<>();
    double[] rates = new double[input.styles()];
    for (int s = 0; s < rates.length; s++) {
      rates[s] = data.styles[s].empty() ? 0 : mean(s);
    }
    walk = RandomWalk.of(data, hyper.draws(), rates, data.prior);
  }

  private RateFit(RateFit before, HyperPosterior hyper, Map<Integer, double[][]> rows) {
    input = before.input;
    data = before.data;
    this.hyper = hyper;
    this.rows = rows;
    walk = before.walk;
  }

  /** Much history leaves little doubt of the hyperparameters, so fewer draws tell as much. */
  private static int draws(int observations) {
    return observations <= 2_000 ? DRAWS : observations <= 4_000 ? 96 : 64;
  }

  /** Fits under the weak prior, {@link Hyperprior#WEAK}. Equal input gives equal output. */
  public static RateFit of(FitInput input) {
    return of(input, draws(input.observations().size()));
  }

  /**
   * Fits under the weak prior.
   *
   * @param input what was logged; may be empty
   * @param draws sets of hyperparameters to weigh, even; 0 takes the peak of their posterior alone
   */
  public static RateFit of(FitInput input, int draws) {
    return of(input, Hyperprior.WEAK, Beliefs.NONE, draws);
  }

  /**
   * Fits beside what other logs tell.
   *
   * @param prior of the hyperparameters, in the light of the other logs
   * @param others what these tell of rates and covers
   */
  public static RateFit of(FitInput input, Hyperprior prior, Beliefs others, int draws) {
    FitData data = new FitData(input, prior, others);
    return new RateFit(input, data, HyperPosterior.of(data, draws));
  }

  /** Fits a short log with few draws, placed two steps from the prior. */
  public static RateFit first(FitInput input, int draws) {
    FitData data = new FitData(input, Hyperprior.WEAK, Beliefs.NONE);
    return new RateFit(
        input, data, HyperPosterior.prior(data).after(data, draws).after(data, draws));
  }

  /** Fits the same log some trips later, with draws placed where this fit stands. */
  public RateFit after(FitInput grown, int draws) {
    FitData more = new FitData(grown, data.prior, data.others);
    return new RateFit(grown, more, hyper.after(more, draws));
  }

  /**
   * This fit with the weights over (rate, draw) multiplied by the likelihood of some more uses.
   * Other styles learn from them through the draws alone, not through the family's mean at each
   * draw, and the walk learns nothing: that takes a fit of the whole log.
   */
  public RateFit learning(List<Observation> more) {
    List<HyperPosterior.Draw> draws = hyper.draws();
    Map<Integer, double[][]> learnt = new ConcurrentHashMap<>(rows);
    double[] chance = new double[draws.size()];
    Arrays.fill(chance, 1);
    for (Observation one : more) {
      double[] rate = data.styles[one.style()].rate;
      double[][] before = rows(one.style());
      double[][] after = before.clone();
      for (int d = 0; d < after.length; d++) {
        if (draws.get(d).weight() < SPENT) {
          chance[d] = 0;
          continue;
        }
        after[d] = new double[rate.length];
        double hours = one.hours() * draws.get(d).multiplier(one.cover());
        double size = draws.get(d).given().hyper().size() * one.days();
        chance[d] *= one.learn(before[d], rate, hours, size, after[d]);
      }
      learnt.put(one.style(), after);
    }
    return new RateFit(this, hyper.learning(chance), learnt);
  }

  /** True if a peak was found and the draws around it carry the posterior. */
  public boolean converged() {
    return hyper.converged();
  }

  /** Data of the fit. */
  public FitInput input() {
    return input;
  }

  /** Weighted sets of hyperparameters with what is known of the rates given them. */
  List<HyperPosterior.Draw> draws() {
    return hyper.draws();
  }

  FitData data() {
    return data;
  }

  RandomWalk walk() {
    return walk;
  }

  /** Weights of the points of a style's rate over the log given each draw; they sum to 1 each. */
  double[][] rows(int style) {
    int family = input.familyOfStyle().get(style);
    return rows.computeIfAbsent(
        style,
        s ->
            hyper.draws().stream()
                .map(draw -> draw.given().rate(s, family))
                .toArray(double[][]::new));
  }

  /** Weights of a style's rate over the log, by point. */
  double[] marginal(int style) {
    double[] sum = new double[data.styles[style].count];
    double[][] given = rows(style);
    for (int d = 0; d < given.length; d++) {
      double weight = hyper.draws().get(d).weight();
      for (int i = 0; i < sum.length; i++) {
        sum[i] += weight * given[d][i];
      }
    }
    return sum;
  }

  /** Mean rate of a style, pieces per hour. */
  private double mean(int style) {
    double mean = 0;
    double[] weights = marginal(style);
    for (int i = 0; i < weights.length; i++) {
      mean += weights[i] * data.styles[style].rate[i];
    }
    return mean;
  }

  /**
   * The rate of a style per hour on the next trip at the mix of covers, with its 90 % interval,
   * whose ends are right to about 0.5 % of the rate, given the draws.
   */
  public Estimate rate(int style) {
    double[] chances = RandomWalk.chances(walk.variance(style, 0), data.styles[style].step);
    double[] ahead = RandomWalk.forward(marginal(style), chances);
    double power = data.styles[style].lost;
    for (HyperPosterior.Draw draw : hyper.draws()) {
      power += draw.weight() * draw.given().shape();
    }
    int first = data.styles[style].first - chances.length / 2;
    return Estimate.ofGrid(mean(style), ahead, first, data.styles[style].step, power);
  }

  /**
   * Multiplier of rates in a cover, relative to the mix of covers logged, with its 90 % interval.
   *
   * @param cover as in {@link Term}
   */
  public Estimate multiplier(int cover) {
    return Estimate.ofDraws(
        hyper.draws().stream().mapToDouble(draw -> draw.multiplier(cover)).toArray(),
        hyper.draws().stream().mapToDouble(HyperPosterior.Draw::weight).toArray());
  }

  /**
   * Share of a style's rate that comes from its own history, 0 to 1; 0 without losses: 1 less the
   * variance of its log rate after its log over that before, &psi;'(a) given the family's mean;
   * beside other logs, where a style is a family of its own, the variance of that mean counts too.
   * The log tells as much as y independent losses would, 1/&psi;'(a + y) - 1/&psi;'(a), each piece
   * lost on a trip with m expected counting 1 / (1 + m/(&kappa; d)).
   */
  public double ownShare(int style) {
    int family = input.familyOfStyle().get(style);
    double rate = mean(style);
    double before = 0;
    double after = 0;
    for (HyperPosterior.Draw draw : hyper.draws()) {
      double shape = draw.given().shape();
      double within = Gamma.trigamma(shape);
      double mean = data.others.known() ? draw.given().familySpread(family) : 0;
      double variance = within + mean * mean;
      double told =
          1 / Gamma.trigamma(shape + data.styles[style].independent(rate, draw)) - 1 / within;
      before += draw.weight() * variance;
      after += draw.weight() / (1 / variance + told);
    }
    return Math.max(0, 1 - after / before);
  }

  /** Pieces of a style lost over all the terms together; kept. */
  public CountDistribution losses(int style, List<Term> terms) {
    Asked used = new Asked(style, terms.stream().filter(term -> term.hours() > 0).toList());
    if (used.terms().isEmpty()) {
      return CountDistribution.none();
    }
    return known.computeIfAbsent(
        used,
        asked -> {
          double[] whole = new double[asked.terms().size()];
          Arrays.fill(whole, 1);
          return losses(stretch(asked), new double[] {1}, new double[][] {whole});
        });
  }

  private boolean rough() {
    return hyper.draws().size() < FEW_DRAWS;
  }

  private Stretch stretch(Asked asked) {
    return new Stretch(this, asked.style(), asked.terms(), rough() ? ROUGH : FAINT);
  }

  /**
   * Pieces lost of what has a share in each term.
   *
   * @param weights of the cases
   * @param share by case and term
   */
  private CountDistribution losses(Stretch stretch, double[] weights, double[][] share) {
    CountMixture mixture = new CountMixture(rough() ? ROUGH : TAIL);
    for (int k = 0; k < weights.length; k++) {
      stretch.addTo(mixture, weights[k], share[k]);
    }
    return mixture.distribution();
  }

  /**
   * Pieces of an item lost over groups of terms, where the item has a share in each group that is
   * Beta(own, rest of the group) and the shares rise and fall together: all are at the same
   * quantile, which is summed over 8 Gauss-Legendre nodes, and moved so that their means are right.
   * Off by mostly 1e-4, at most 6e-4 in a chance.
   *
   * @param own Dirichlet parameter of the item, &gt; 0
   * @param rests those of the other items of each group together, &ge; 0
   */
  public CountDistribution shared(
      int style, List<List<Term>> groups, double own, List<Double> rests) {
    List<Term> terms = groups.stream().flatMap(List::stream).toList();
    if (Collections.max(rests) == 0) {
      return losses(style, terms);
    }
    GaussIntegrator nodes = NODES.legendre(SHARE_NODES, 0, 1);
    double[] weights = new double[SHARE_NODES];
    for (int k = 0; k < SHARE_NODES; k++) {
      weights[k] = nodes.getWeight(k) * 6 * nodes.getPoint(k) * (1 - nodes.getPoint(k));
    }
    double[][] share = new double[SHARE_NODES][terms.size()];
    int first = 0;
    for (int g = 0; g < groups.size(); g++) {
      int next = first + groups.get(g).size();
      double[] its = quantiles.computeIfAbsent(List.of(own, rests.get(g)), RateFit::quantiles);
      double mean = 0;
      for (int k = 0; k < SHARE_NODES; k++) {
        mean += weights[k] * its[k];
      }
      for (int k = 0; k < SHARE_NODES; k++) {
        double moved = its[k] * own / (own + rests.get(g)) / mean;
        Arrays.fill(share[k], first, next, Math.min(1, moved));
      }
      first = next;
    }
    Stretch stretch = stretches.computeIfAbsent(new Asked(style, terms), this::stretch);
    return losses(stretch, weights, share);
  }

  /**
   * Quantiles of a Beta(own, rest) share at v<sup>2</sup> (3 - 2v) for the nodes v: denser at the
   * ends, where shares run off to 0 or 1.
   */
  private static double[] quantiles(List<Double> ownAndRest) {
    double[] shares = new double[SHARE_NODES];
    Arrays.fill(shares, 1);
    if (ownAndRest.get(1) > 0) {
      var beta = new BetaDistribution(null, ownAndRest.get(0), ownAndRest.get(1), 1e-8);
      for (int k = 0; k < SHARE_NODES; k++) {
        double v = NODES.legendre(SHARE_NODES, 0, 1).getPoint(k);
        shares[k] = Math.max(1e-9, beta.inverseCumulativeProbability(v * v * (3 - 2 * v)));
      }
    }
    return shares;
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
}
