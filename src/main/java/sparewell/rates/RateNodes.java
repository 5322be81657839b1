package sparewell.rates;

import java.util.Arrays;
import org.apache.commons.math3.special.Gamma;

/**
 * The rate of one style as weighted points, for given hyperparameters and any mean of its family.
 *
 * <p>Trapezoidal rule over the log rate x: the integrand is analytic and falls off exponentially,
 * so equal steps converge exponentially; the step follows the narrowest the posterior can be. Where
 * nothing more is learnt from the data to the left, the rest of the infinite sum is a geometric
 * series and becomes one more point. Relative accuracy of {@link #logEvidence} about 1e-8.
 *
 * @see "Trefethen &amp; Weideman, The exponentially convergent trapezoidal rule, SIAM Review 56
 *     (2014)"
 */
final class RateNodes {
  private static final double DEPTH = 26; // e^-26 of the peak is left out on either side
  private static final int MOST = 4000;

  private final double shape;
  private final double logNorm; // a ln a - ln Gamma(a)
  private double[] rate;
  private double[] logRate;
  private double[] base; // weight without what depends on the family mean, scaled to a peak of 1
  private double logScale;
  private double tailVariance; // of the log rate within the first point
  private int count;
  private double step;

  /**
   * Places the points.
   *
   * @param shape shape a of the gamma distribution within the family
   * @param lowMean least ln family mean that will be asked for
   * @param highMean largest
   */
  RateNodes(StyleHistory.Likelihood data, double shape, double lowMean, double highMean) {
    this.shape = shape;
    this.logNorm = shape * Math.log(shape) - Gamma.logGamma(shape);
    place(data, lowMean, highMean);
  }

  private void place(StyleHistory.Likelihood data, double lowMean, double highMean) {
    double power = shape + data.pieces;
    step = Math.min(0.4, 0.7 / Math.sqrt(power));
    double slopeLow = shape * Math.exp(-lowMean);
    double slopeHigh = shape * Math.exp(-highMean);
    double start = Math.log(power / (data.exposure + shape * Math.exp(-(lowMean + highMean) / 2)));
    double flat = Math.log(1e-4 / (data.exposure + slopeLow));

    double[] left = new double[64];
    int lefts = 0;
    double best = Double.NEGATIVE_INFINITY;
    boolean closed = false;
    for (int j = 0; j < MOST; j++) {
      double x = start - j * step;
      if (j > 0 && x < flat) {
        closed = true;
        break;
      }
      double l = data.at(x) + shape * x;
      if (lefts == left.length) {
        left = Arrays.copyOf(left, 2 * lefts);
      }
      left[lefts++] = l;
      double v = l - slopeLow * Math.exp(x);
      best = Math.max(best, v);
      if (v < best - DEPTH) {
        break;
      }
    }
    double[] right = new double[64];
    int rights = 0;
    double first = left[0] - slopeHigh * Math.exp(start);
    best = first;
    for (int j = 1; j < MOST; j++) {
      double x = start + j * step;
      double l = data.at(x) + shape * x;
      if (rights == right.length) {
        right = Arrays.copyOf(right, 2 * rights);
      }
      right[rights++] = l;
      double v = l - slopeHigh * Math.exp(x);
      best = Math.max(best, v);
      if (v < best - DEPTH) {
        break;
      }
    }
    int extra = closed ? 1 : 0;
    count = lefts + rights + extra;
    rate = new double[count];
    logRate = new double[count];
    base = new double[count];
    for (int i = 0; i < lefts; i++) {
      logRate[extra + lefts - 1 - i] = start - i * step;
      base[extra + lefts - 1 - i] = left[i];
    }
    for (int i = 0; i < rights; i++) {
      logRate[extra + lefts + i] = start + (i + 1) * step;
      base[extra + lefts + i] = right[i];
    }
    for (int i = extra; i < count; i++) {
      rate[i] = Math.exp(logRate[i]);
    }
    if (closed) {
      close(power, data.exposure);
    }
    double peak = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      peak = Math.max(peak, base[i]);
    }
    for (int i = 0; i < count; i++) {
      base[i] = Math.exp(base[i] - peak);
    }
    logScale = peak + Math.log(step);
  }

  /** Sums the rest of the series to the left of the second point into the first. */
  private void close(double power, double exposure) {
    double q = Math.exp(-power * step);
    double next = Math.exp(-(power + 1) * step);
    double first = rate[1];
    rate[0] = first * (next / (1 - next)) * ((1 - q) / q);
    logRate[0] = logRate[1] - step / (1 - q);
    tailVariance = step * step * q / ((1 - q) * (1 - q));
    base[0] = base[1] + exposure * (first - rate[0]) + Math.log(q / (1 - q));
  }

  int count() {
    return count;
  }

  double rate(int i) {
    return rate[i];
  }

  double logRate(int i) {
    return logRate[i];
  }

  /** Width in log rate that a point stands for. */
  double step() {
    return step;
  }

  /** ln of the chance of the style's data given ln of its family's mean rate. */
  double logEvidence(double logMean) {
    double pull = shape * Math.exp(-logMean);
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += base[i] * Math.exp(-pull * rate[i]);
    }
    return logNorm - shape * logMean + logScale + Math.log(sum);
  }

  /**
   * Value, first and second derivative of {@link #logEvidence}.
   *
   * @param out receives them, added to what is there
   */
  void addEvidence(double logMean, double[] out) {
    double pull = shape * Math.exp(-logMean);
    double sum = 0;
    double sumRate = 0;
    double sumSquare = 0;
    for (int i = 0; i < count; i++) {
      double p = base[i] * Math.exp(-pull * rate[i]);
      sum += p;
      sumRate += p * rate[i];
      sumSquare += p * rate[i] * rate[i];
    }
    double mean = pull * sumRate / sum;
    double variance = pull * pull * sumSquare / sum - mean * mean;
    out[0] += logNorm - shape * logMean + logScale + Math.log(sum);
    out[1] += mean - shape;
    out[2] += variance - mean;
  }

  /**
   * Adds the posterior weights of the points given ln of the family mean.
   *
   * @param factor what to multiply them with
   * @param out receives them
   */
  void addWeights(double logMean, double factor, double[] out) {
    double pull = shape * Math.exp(-logMean);
    double sum = 0;
    double[] p = new double[count];
    for (int i = 0; i < count; i++) {
      p[i] = base[i] * Math.exp(-pull * rate[i]);
      sum += p[i];
    }
    for (int i = 0; i < count; i++) {
      out[i] += factor * p[i] / sum;
    }
  }

  /** Variance of the log rate given ln of the family mean. */
  double logVariance(double logMean) {
    double[] p = new double[count];
    addWeights(logMean, 1, p);
    double mean = 0;
    double square = p[0] * tailVariance;
    for (int i = 0; i < count; i++) {
      mean += p[i] * logRate[i];
      square += p[i] * logRate[i] * logRate[i];
    }
    return square - mean * mean;
  }
}
