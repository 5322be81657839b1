package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Evidence of a log alone, its prior divided out, so that logs of several anglers can be put
 * together without counting the prior again and again.
 *
 * <p>Of a style's rate: the likelihood, averaged over the draws of the other quantities, in the
 * shape of a gamma density, &lambda;<sup>y</sup> e<sup>-h&lambda;</sup>; a normal shape would be
 * far off for a style without a loss. Of the rest, where much is logged or the prior rules: normal
 * on the log scale, by differences of precisions (1/variance, mean/variance) of posterior and
 * prior.
 */
public final class OwnEvidence {
  private static final double FAINT = 1e-12; // weight of a point that does not matter
  private static final double LEAST_PRECISION = 0.02;

  private final RateFit fit;

  /**
   * A gamma-shaped likelihood of a rate.
   *
   * @param pieces y, pieces lost as if by chance alone, &ge; 0
   * @param hours h, hours as if by chance alone, &gt; 0
   */
  public record Gamma(double pieces, double hours) {}

  /**
   * A normal likelihood on the log scale.
   *
   * @param mean where it peaks
   * @param variance &gt; 0
   */
  public record Normal(double mean, double variance) {}

  /** Evidence of a fit under the weak prior, without other logs. */
  public OwnEvidence(RateFit fit) {
    this.fit = fit;
  }

  /**
   * Evidence on a style's rate per hour, at the log's mix of covers; absent where it was never
   * used. In place of the log it would leave the same mean and variance of the log rate.
   */
  public Optional<Gamma> rate(int style) {
    StyleData data = fit.data().styles[style];
    if (data.empty()) {
      return Optional.empty();
    }
    double[] after = fit.marginal(style);
    double[] likelihood = likelihood(style);
    double most = Arrays.stream(after).max().orElseThrow();
    double[] before = new double[after.length];
    for (int i = 0; i < after.length; i++) {
      before[i] = after[i] > FAINT * most && likelihood[i] > 0 ? after[i] / likelihood[i] : 0;
    }
    return GammaShape.of(before, after, data.first, data.step, data.lost + 1);
  }

  /** Likelihood of a style's rate at each point, averaged over the draws, up to a factor. */
  double[] likelihood(int style) {
    int family = fit.input().familyOfStyle().get(style);
    List<double[]> logs =
        fit.draws().stream().map(draw -> draw.given().logLikelihood(style, family)).toList();
    double top = logs.stream().flatMapToDouble(Arrays::stream).max().orElseThrow();
    double[] sum = new double[logs.get(0).length];
    for (int d = 0; d < logs.size(); d++) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += fit.draws().get(d).weight() * Math.exp(logs.get(d)[i] - top);
      }
    }
    return sum;
  }

  /** Evidence on the log rate of a family's typical style; absent where none was used. */
  public Optional<Normal> family(int family) {
    double mean = 0;
    double precision = 0;
    for (HyperPosterior.Draw draw : fit.draws()) {
      double[] weights = draw.given().meanWeights(family);
      Hyper hyper = draw.given().hyper();
      double m = 0;
      double square = 0;
      for (int i = 0; i < weights.length; i++) {
        double log = draw.given().mean(family, i) * FitData.STEP;
        m += weights[i] * log;
        square += weights[i] * log * log;
      }
      double before = 1 / Math.pow(draw.given().familySpread(family), 2);
      double after = 1 / (square - m * m);
      double typical = Math.log1p(1 / hyper.shape) / 2; // a mean rate is above a typical one
      precision += draw.weight() * (after - before);
      mean += draw.weight() * (after * m - before * hyper.logRate - (after - before) * typical);
    }
    return normal(mean, precision);
  }

  /** Evidence on the log multiplier of a cover, against the log's mix of covers. */
  public Optional<Normal> cover(int cover) {
    double[] mix = fit.data().mix;
    double squares = 0;
    for (double share : mix) {
      squares += share * share;
    }
    // ln m = s z - ln of the mix's mean of e^(s z), to second order.
    double s = fit.data().prior.coverSpread();
    double before = s * s * (1 - 2 * mix[cover] + squares);
    double centre = -s * s * (1 - squares) / 2;
    return divided(draw -> Math.log(draw.multiplier(cover)), centre, before);
  }

  /** Evidence on the log rate of a typical style. */
  public Optional<Normal> commonRate() {
    Hyperprior prior = fit.data().prior;
    double spread = prior.logRateSpread() * Hyperprior.RATE_SPREAD;
    return divided(
        draw -> draw.given().hyper().logRate - Math.log1p(1 / draw.given().hyper().shape) / 2,
        prior.logRateCentre(),
        spread * spread);
  }

  /** Evidence on the log of the standard deviation of the log rate between families. */
  public Optional<Normal> familySpread() {
    return divided(
        draw -> Math.log(draw.given().hyper().familySpread),
        fit.data().prior.logFamilyCentre(),
        fit.data().prior.logFamilySpread() * fit.data().prior.logFamilySpread());
  }

  /** Evidence on the log of the coefficient of variation of rates within a family. */
  public Optional<Normal> styleSpread() {
    return divided(
        draw -> -Math.log(draw.given().hyper().shape) / 2,
        fit.data().prior.logStyleCentre(),
        fit.data().prior.logStyleSpread() * fit.data().prior.logStyleSpread());
  }

  /** Evidence on the log of the size of a day's extra variation. */
  public Optional<Normal> daySize() {
    return divided(
        draw -> Math.log(draw.given().hyper().size),
        fit.data().prior.logSizeCentre(),
        fit.data().prior.logSizeSpread() * fit.data().prior.logSizeSpread());
  }

  private Optional<Normal> divided(
      ToDoubleFunction<HyperPosterior.Draw> value, double centre, double variance) {
    double mean = 0;
    double square = 0;
    for (HyperPosterior.Draw draw : fit.draws()) {
      double x = value.applyAsDouble(draw);
      mean += draw.weight() * x;
      square += draw.weight() * x * x;
    }
    double after = 1 / (square - mean * mean);
    double before = 1 / variance;
    return normal(after * mean - before * centre, after - before);
  }

  private static Optional<Normal> normal(double product, double precision) {
    return precision > LEAST_PRECISION && Double.isFinite(precision + product)
        ? Optional.of(new Normal(product / precision, 1 / precision))
        : Optional.empty();
  }
}
