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
  private static final int FEWEST = 5; // points of the grid
  private static final double REACH = 2; // posterior standard deviations on either side
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
   * used.
   */
  public Optional<Gamma> rate(int style) {
    if (fit.data().styles[style].empty()) {
      return Optional.empty();
    }
    Estimate rate = fit.rate(style);
    double centre = (Math.log(rate.low90()) + Math.log(rate.high90())) / 2;
    double spread = (Math.log(rate.high90()) - Math.log(rate.low90())) / (2 * 1.6449);
    StyleData data = fit.data().styles[style];
    double step = data.step;
    int from = (int) Math.round((centre - REACH * spread) / step) - 1 - data.first;
    int to = (int) Math.round((centre + REACH * spread) / step) + 1 - data.first;
    from = Math.max(0, Math.min(from, data.count - FEWEST));
    to = Math.min(data.count - 1, Math.max(to, from + FEWEST - 1));
    double[] away = new double[to - from + 1];
    double[] log = new double[away.length];
    for (int i = 0; i < away.length; i++) {
      away[i] = (data.first + from + i) * step - centre;
    }
    for (HyperPosterior.Draw draw : fit.draws()) {
      double[] given = draw.given().logLikelihood(style);
      for (int i = 0; i < away.length; i++) {
        log[i] += draw.weight() * Math.exp(given[from + i]);
      }
    }
    for (int i = 0; i < away.length; i++) {
      log[i] = Math.log(Math.max(log[i], 1e-300));
    }
    return gamma(away, log, spread)
        .map(found -> new Gamma(found.pieces(), found.hours() * Math.exp(-centre)));
  }

  /** Least squares of log = c + y u - h e^u, points weighed by a normal density. */
  private static Optional<Gamma> gamma(double[] u, double[] log, double spread) {
    double all = 0;
    double[] mean = new double[3];
    double[][] x = new double[u.length][];
    double[] weight = new double[u.length];
    for (int i = 0; i < u.length; i++) {
      weight[i] = Math.exp(-u[i] * u[i] / (2 * spread * spread));
      x[i] = new double[] {u[i], -Math.exp(u[i]), log[i]};
      all += weight[i];
      for (int k = 0; k < 3; k++) {
        mean[k] += weight[i] * x[i][k];
      }
    }
    double[][] s = new double[3][3];
    for (int i = 0; i < u.length; i++) {
      for (int k = 0; k < 3; k++) {
        for (int l = 0; l < 3; l++) {
          s[k][l] += weight[i] * (x[i][k] - mean[k] / all) * (x[i][l] - mean[l] / all);
        }
      }
    }
    double determinant = s[0][0] * s[1][1] - s[0][1] * s[0][1];
    double pieces = (s[0][2] * s[1][1] - s[1][2] * s[0][1]) / determinant;
    double hours = (s[0][0] * s[1][2] - s[0][1] * s[0][2]) / determinant;
    if (!(pieces > 0)) {
      pieces = 0;
      hours = s[1][2] / s[1][1];
    }
    return hours > 0 && Double.isFinite(hours + pieces)
        ? Optional.of(new Gamma(pieces, hours))
        : Optional.empty();
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
