package sparewell.rates;

import java.util.Arrays;

/**
 * The likelihood of one style at equally spaced log rates.
 *
 * <p>Trapezoidal rule over the log rate: the integrand is analytic and falls off exponentially, so
 * equal steps converge exponentially; the step follows the narrowest the posterior can be. Where
 * nothing more is learnt from the data to the left, the rest of the infinite sum is a geometric
 * series and becomes one more point. All points lie on a lattice shared with the family means, so
 * that the density of rates within a family is looked up, not computed ({@link GammaKernel}).
 *
 * @see "Trefethen &amp; Weideman, The exponentially convergent trapezoidal rule, SIAM Review 56
 *     (2014)"
 */
final class RateNodes {
  /** Widest step in log rate. */
  static final double WIDEST = 0.32;

  private static final double DEPTH = 22; // e^-22 of the peak is left out on either side
  private static final double FLAT = 2e-5;
  private static final int MOST = 6000;

  private final int stride;
  private final double step;
  private int first; // lattice number of the first point
  private double[] likelihood; // scaled to a peak of 1
  private double[] rate;
  private double logScale; // ln of what likelihood was divided by, and of the step
  private double
      tailWeight; // sum of the series to the left of the first point, over the first term
  private double tailRate;
  private double tailLogRate;
  private double tailVariance;

  /** Halvings of the widest step that a style needs at a shape. */
  static int halvings(double power) {
    double step = Math.min(WIDEST, 0.6 / Math.sqrt(power));
    return Math.max(0, (int) Math.ceil(Math.log(WIDEST / step) / Math.log(2) - 1e-9));
  }

  /**
   * Places the points.
   *
   * @param unit step of the lattice
   * @param halvings halvings of the widest step that make the unit
   * @param shape shape a of the gamma distribution within the family
   * @param lowMean least ln family mean that will be asked for
   * @param highMean largest
   */
  RateNodes(
      StyleHistory.Likelihood data,
      double unit,
      int halvings,
      double shape,
      double lowMean,
      double highMean) {
    double power = shape + data.pieces;
    stride = 1 << Math.max(0, halvings - halvings(power));
    step = stride * unit;
    place(data, unit, shape, lowMean, highMean);
  }

  private void place(
      StyleHistory.Likelihood data, double unit, double shape, double lowMean, double highMean) {
    double slopeLow = shape * Math.exp(-lowMean);
    double slopeHigh = shape * Math.exp(-highMean);
    double slopeMiddle = shape * Math.exp(-(lowMean + highMean) / 2);
    double power = shape + data.pieces;
    int start = (int) Math.round(Math.log(power / (data.exposure + slopeMiddle)) / unit);
    double startRate = Math.exp(start * unit);
    double flatRate = FLAT / (data.exposure + slopeLow);
    double shrink = Math.exp(-step);

    double[] left = new double[32];
    double best = Double.NEGATIVE_INFINITY;
    int lefts = 0;
    boolean closed = false;
    double r = startRate;
    while (lefts < MOST) {
      double x = (start - lefts * stride) * unit;
      if (lefts == left.length) {
        left = Arrays.copyOf(left, 2 * lefts);
      }
      left[lefts] = data.at(x, r);
      double v = left[lefts] + shape * x - slopeLow * r;
      lefts++;
      best = Math.max(best, v);
      if (v < best - DEPTH) {
        break;
      }
      if (r < flatRate) {
        closed = true;
        break;
      }
      r *= shrink;
    }
    double[] right = new double[32];
    int rights = 0;
    best = left[0] + shape * start * unit - slopeHigh * startRate;
    r = startRate;
    while (rights < MOST) {
      r /= shrink;
      double x = (start + (rights + 1) * stride) * unit;
      if (rights == right.length) {
        right = Arrays.copyOf(right, 2 * rights);
      }
      right[rights] = data.at(x, r);
      double v = right[rights] + shape * x - slopeHigh * r;
      rights++;
      best = Math.max(best, v);
      if (v < best - DEPTH) {
        break;
      }
    }
    gather(start, left, lefts, right, rights, unit);
    if (closed) {
      close(power, data.exposure);
    }
  }

  private void gather(
      int start, double[] left, int lefts, double[] right, int rights, double unit) {
    int count = lefts + rights;
    first = start - (lefts - 1) * stride;
    likelihood = new double[count];
    rate = new double[count];
    double peak = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      likelihood[i] = i < lefts ? left[lefts - 1 - i] : right[i - lefts];
      peak = Math.max(peak, likelihood[i]);
    }
    double grow = Math.exp(step);
    double r = Math.exp(first * unit);
    for (int i = 0; i < count; i++) {
      likelihood[i] = Math.exp(likelihood[i] - peak);
      rate[i] = r;
      r *= grow;
    }
    logScale = peak + Math.log(step);
  }

  /** Sums the rest of the series to the left of the first point. */
  private void close(double power, double exposure) {
    double q = Math.exp(-power * step);
    double next = Math.exp(-(power + 1) * step);
    tailRate = rate[0] * (next / (1 - next)) * ((1 - q) / q);
    tailLogRate = Math.log(rate[0]) - step / (1 - q);
    tailVariance = step * step * q / ((1 - q) * (1 - q));
    tailWeight = q / (1 - q) * (1 + exposure * (rate[0] - tailRate));
  }

  int count() {
    return rate.length;
  }

  int first() {
    return first;
  }

  int last() {
    return first + (rate.length - 1) * stride;
  }

  double rate(int i) {
    return rate[i];
  }

  double tailRate() {
    return tailRate;
  }

  double tailLogRate() {
    return tailLogRate;
  }

  boolean hasTail() {
    return tailWeight > 0;
  }

  /** Width in log rate that a point stands for. */
  double step() {
    return step;
  }

  /**
   * ln of the chance of the style's data given its family's mean rate.
   *
   * @param mean lattice number of the ln family mean
   */
  double logEvidence(GammaKernel kernel, int mean) {
    return logScale + kernel.logNorm() + Math.log(sum(kernel, mean));
  }

  private double sum(GammaKernel kernel, int mean) {
    double sum = tail(kernel, mean);
    int end = Math.min(likelihood.length, kernel.end(mean, first, stride));
    double[] density = kernel.density();
    int k = kernel.index(mean, first);
    for (int i = 0; i < end; i++) {
      sum += likelihood[i] * density[k];
      k += stride;
    }
    return sum;
  }

  private double tail(GammaKernel kernel, int mean) {
    if (tailWeight == 0) {
      return 0;
    }
    double density = kernel.density()[kernel.index(mean, first)];
    double pull = kernel.pull(mean);
    return tailWeight * likelihood[0] * density * (1 + pull * (rate[0] - tailRate));
  }

  /**
   * Adds the posterior weights of the points given the family mean.
   *
   * @param factor what to multiply them with
   * @param out receives them; one more than there are points, the last for the tail
   */
  void addWeights(GammaKernel kernel, int mean, double factor, double[] out) {
    double sum = sum(kernel, mean);
    if (!(sum > 0)) {
      return; // the data are impossible there, so the family mean has no weight either
    }
    double each = factor / sum;
    int end = Math.min(likelihood.length, kernel.end(mean, first, stride));
    double[] density = kernel.density();
    int k = kernel.index(mean, first);
    for (int i = 0; i < end; i++) {
      out[i] += each * likelihood[i] * density[k];
      k += stride;
    }
    out[likelihood.length] += each * tail(kernel, mean);
  }

  /**
   * Expectation over the rate given the family mean.
   *
   * @param values what to take it of, at each point and the tail
   */
  double expectation(GammaKernel kernel, int mean, double[] values) {
    int end = Math.min(likelihood.length, kernel.end(mean, first, stride));
    double[] density = kernel.density();
    int k = kernel.index(mean, first);
    double tail = tail(kernel, mean);
    double sum = tail;
    double product = tail * values[likelihood.length];
    for (int i = 0; i < end; i++) {
      double weight = likelihood[i] * density[k];
      sum += weight;
      product += weight * values[i];
      k += stride;
    }
    return sum > 0 ? product / sum : 0;
  }

  /** Variance of the log rate given the family mean. */
  double logVariance(GammaKernel kernel, int mean) {
    int end = Math.min(likelihood.length, kernel.end(mean, first, stride));
    double[] density = kernel.density();
    int k = kernel.index(mean, first);
    double start = Math.log(rate[0]);
    double tail = tail(kernel, mean);
    double sum = tail;
    double average = tail * tailLogRate;
    double square = tail * (tailVariance + tailLogRate * tailLogRate);
    for (int i = 0; i < end; i++) {
      double weight = likelihood[i] * density[k];
      double x = start + i * step;
      sum += weight;
      average += weight * x;
      square += weight * x * x;
      k += stride;
    }
    if (!(sum > 0)) {
      return 0;
    }
    average /= sum;
    return Math.max(0, square / sum - average * average);
  }
}
