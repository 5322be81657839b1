package sparewell.rates.fit;

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
  private static final double FAINT = 1e-4; // pieces expected of a rate that nothing was learnt of
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
   * used, or only ran out. Slope and curvature of ln of the likelihood along the log rate x, both
   * averaged over the posterior, are those of y x - h e<sup>x</sup>.
   */
  public Optional<Gamma> rate(int style) {
    StyleData data = fit.data().styles[style];
    if (data.empty()) {
      return Optional.empty();
    }
    double[] weights = fit.marginal(style);
    double[] likelihood = likelihood(style);
    double all = 0;
    double slope = 0;
    double bend = 0;
    double rate = 0;
    for (int i = 1; i < weights.length - 1; i++) {
      if (likelihood[i - 1] > 0 && likelihood[i + 1] > 0) {
        double here = Math.log(likelihood[i]);
        double before = Math.log(likelihood[i - 1]);
        double after = Math.log(likelihood[i + 1]);
        all += weights[i];
        slope += weights[i] * (after - before) / (2 * data.step);
        bend += weights[i] * (2 * here - before - after) / (data.step * data.step);
        rate += weights[i] * data.rate[i];
      }
    }
    double pieces = Math.max(0, (slope + bend) / all);
    double hours = (pieces * all - slope) / rate;
    return hours * rate > FAINT * all ? Optional.of(new Gamma(pieces, hours)) : Optional.empty();
  }

  /** Likelihood of a style's rate at each point, averaged over the draws, up to a factor. */
  double[] likelihood(int style) {
    int family = fit.input().familyOfStyle().get(style);
    double[] sum = new double[fit.data().styles[style].count];
    for (HyperPosterior.Draw draw : fit.draws()) {
      // Over the chance of the log given the rest of it, which the draw's weight counts already.
      double weight = draw.weight() * draw.given().inverseChance(style, family);
      double[] given = draw.given().likelihood(style);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += weight * given[i];
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
      double typical = Math.log1p(1 / hyper.shape()) / 2; // a mean rate is above a typical one
      precision += draw.weight() * (after - before);
      mean += draw.weight() * (after * m - before * hyper.logRate() - (after - before) * typical);
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
    return divided(draw -> Math.log(draw.multiplier(cover)), centre, Math.sqrt(before));
  }

  /** Evidence on the log rate of a typical style. */
  public Optional<Normal> commonRate() {
    Hyperprior prior = fit.data().prior;
    return divided(
        draw -> draw.given().hyper().logRate() - Math.log1p(1 / draw.given().hyper().shape()) / 2,
        prior.logRateCentre(),
        prior.logRateSpread() * Hyperprior.RATE_SPREAD);
  }

  /** Evidence on the log of the standard deviation of the log rate between families. */
  public Optional<Normal> familySpread() {
    return divided(
        draw -> Math.log(draw.given().hyper().familySpread()),
        fit.data().prior.logFamilyCentre(),
        fit.data().prior.logFamilySpread());
  }

  /** Evidence on the log of the coefficient of variation of rates within a family. */
  public Optional<Normal> styleSpread() {
    return divided(
        draw -> -Math.log(draw.given().hyper().shape()) / 2,
        fit.data().prior.logStyleCentre(),
        fit.data().prior.logStyleSpread());
  }

  /** Evidence on the log of the size of a day's extra variation. */
  public Optional<Normal> daySize() {
    return divided(
        draw -> Math.log(draw.given().hyper().size()),
        fit.data().prior.logSizeCentre(),
        fit.data().prior.logSizeSpread());
  }

  private Optional<Normal> divided(
      ToDoubleFunction<HyperPosterior.Draw> value, double centre, double spread) {
    double mean = 0;
    double square = 0;
    for (HyperPosterior.Draw draw : fit.draws()) {
      double x = value.applyAsDouble(draw);
      mean += draw.weight() * x;
      square += draw.weight() * x * x;
    }
    double after = 1 / (square - mean * mean);
    double before = 1 / (spread * spread);
    return normal(after * mean - before * centre, after - before);
  }

  private static Optional<Normal> normal(double product, double precision) {
    return precision > LEAST_PRECISION && Double.isFinite(precision + product)
        ? Optional.of(new Normal(product / precision, 1 / precision))
        : Optional.empty();
  }
}
