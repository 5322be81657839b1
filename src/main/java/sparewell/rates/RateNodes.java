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

  private static final double DEPTH = 21; // e^-21 of the peak is left out on either side
  private static final double ROUGH_DEPTH = 12;
  private static final double FLAT = 2e-5;
  private static final int MOST = 6000;
  private static final double UNDERFLOW = 1e-250;

  private final double depth;
  private final int stride;
  private final double step;
  private final int first; // lattice number of the first point
  private final double[] logLikelihood;
  private final double[] likelihood; // scaled to a peak of 1
  private final double[] rate;
  private final double logPeak;
  private double
      tailWeight; // sum of the series to the left of the first point, over the first term
  private double tailRate;
  private double tailLogRate;
  private double tailVariance;

  /**
   * Widest step at which the trapezoidal rule is right to 1e-8: 0.64 of the standard deviation of
   * the narrowest posterior.
   *
   * @param power shape and pieces that the posterior rests on
   * @param rough whether 1e-4 will do, for which a whole standard deviation is enough
   */
  static double step(double power, boolean rough) {
    return Math.min(WIDEST, (rough ? 1 : 0.64) / Math.sqrt(power));
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
    this(data, unit, halvings, shape, lowMean, highMean, false);
  }

  /**
   * Places them more sparsely.
   *
   * @param rough whether integrals need be right to 1e-4 only
   */
  RateNodes(
      StyleHistory.Likelihood data,
      double unit,
      int halvings,
      double shape,
      double lowMean,
      double highMean,
      boolean rough) {
    depth = rough ? ROUGH_DEPTH : DEPTH;
    double power = shape + data.pieces;
    stride = Math.max(1, (int) (step(power, rough) / unit + 1e-9));
    step = stride * unit;
    double slopeLow = shape * Math.exp(-lowMean);
    double slopeHigh = shape * Math.exp(-highMean);
    double flatRate = FLAT / (data.exposure + slopeLow);
    int flattest = (int) Math.floor(Math.log(flatRate) / step) - 1;
    // First guess of the range: a gamma density, from its third-order expansion.
    double wide = Math.sqrt(2 * depth / power);
    double skew = depth / (3 * power);
    double from = Math.log(power / (data.exposure + slopeLow)) - 1.1 * (wide + skew);
    double to = Math.log(power / (data.exposure + slopeHigh)) + 1.1 * wide;
    int left = (int) Math.max(flattest, Math.floor(from / step));
    int right = Math.max(left + 4, (int) Math.ceil(to / step));
    while (true) {
      double[] rates = rates(left, right);
      double[] logs = data.at(halvings, left * stride, stride, rates);
      int begin = begin(logs, rates, left, shape, slopeLow);
      int end = end(logs, rates, left, shape, slopeHigh);
      int more = Math.max(4, (right - left) / 3);
      boolean leftDone = begin > 0 || rates[0] <= flatRate;
      if (right - left > MOST || leftDone && end < logs.length) {
        begin = Math.max(0, begin - 1);
        first = (left + begin) * stride;
        logLikelihood = Arrays.copyOfRange(logs, begin, end);
        rate = Arrays.copyOfRange(rates, begin, end);
        break;
      }
      left = leftDone ? left : Math.max(left - more, flattest);
      right = end < logs.length ? right : right + more;
    }
    double peak = Double.NEGATIVE_INFINITY;
    for (double log : logLikelihood) {
      peak = Math.max(peak, log);
    }
    logPeak = peak;
    likelihood = new double[rate.length];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = Math.exp(logLikelihood[i] - peak);
    }
    if (rate[0] <= flatRate) {
      close(shape + data.lost, data.exposure);
    }
  }

  private double[] rates(int left, int right) {
    double[] rates = new double[right - left + 1];
    double grow = Math.exp(step);
    double r = Math.exp(left * step);
    for (int i = 0; i < rates.length; i++) {
      rates[i] = r;
      r *= grow;
    }
    return rates;
  }

  /** The first point that counts when the family mean is lowest. */
  private int begin(double[] logs, double[] rates, int left, double shape, double slope) {
    double best = best(logs, rates, left, shape, slope);
    int i = 0;
    while (logs[i] + shape * (left + i) * step - slope * rates[i] < best - depth) {
      i++;
    }
    return i;
  }

  /** One more than the last point that counts when the family mean is highest. */
  private int end(double[] logs, double[] rates, int left, double shape, double slope) {
    double best = best(logs, rates, left, shape, slope);
    int i = logs.length;
    while (logs[i - 1] + shape * (left + i - 1) * step - slope * rates[i - 1] < best - depth) {
      i--;
    }
    return i;
  }

  private double best(double[] logs, double[] rates, int left, double shape, double slope) {
    double best = Double.NEGATIVE_INFINITY;
    double rise = shape * step;
    double term = rise * left;
    for (int i = 0; i < logs.length; i++) {
      double value = logs[i] + term - slope * rates[i];
      term += rise;
      if (value > best) {
        best = value;
      }
    }
    return best;
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
    double sum = sum(kernel, mean);
    double log = sum > UNDERFLOW ? Math.log(sum) : logSum(logTerms(kernel, mean));
    return logPeak + Math.log(step) + kernel.logNorm() + log;
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

  /** ln of the terms of the sum, for where data and family are so far apart that it underflows. */
  private double[] logTerms(GammaKernel kernel, int mean) {
    double[] logs = new double[rate.length + 1];
    for (int i = 0; i < rate.length; i++) {
      logs[i] = logLikelihood[i] - logPeak + kernel.logDensity(first + i * stride - mean);
    }
    double pull = kernel.pull(mean);
    logs[rate.length] = logs[0] + Math.log(tailWeight * (1 + pull * (rate[0] - tailRate)));
    return logs;
  }

  private static double logSum(double[] logs) {
    double best = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      best = Math.max(best, log);
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - best);
    }
    return best + Math.log(sum);
  }

  private double tail(GammaKernel kernel, int mean) {
    int k = kernel.index(mean, first);
    if (tailWeight == 0 || k >= kernel.density().length) {
      return 0;
    }
    double density = kernel.density()[k];
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
    if (!(sum > UNDERFLOW)) {
      double[] logs = logTerms(kernel, mean);
      double all = logSum(logs);
      for (int i = 0; i < logs.length; i++) {
        out[i] += factor * Math.exp(logs[i] - all);
      }
      return;
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
