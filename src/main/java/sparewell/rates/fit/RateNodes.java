package sparewell.rates.fit;

import java.util.Arrays;

/**
 * The likelihood of one style at equally spaced log rates.
 *
 * <p>Trapezoidal rule over the log rate: the integrand is analytic and falls off exponentially, so
 * equal steps converge exponentially; the step follows the narrowest the posterior can be. {@link
 * RateRange} says where the points lie, {@link LeftTail} stands for the endless rest on the left.
 * All points lie on a lattice shared with the family means, so that the density of rates within a
 * family is looked up, not computed ({@link GammaKernel}).
 *
 * @see "Trefethen &amp; Weideman, The exponentially convergent trapezoidal rule, SIAM Review 56
 *     (2014)"
 */
final class RateNodes {
  /** Widest step in log rate. */
  static final double WIDEST = 0.32;

  private static final double UNDERFLOW = 1e-250;

  private final int stride;
  private final double step;
  private final int first; // lattice number of the first point
  private final double[] logLikelihood;
  private final double[] likelihood; // scaled to a peak of 1
  private final double[] rate;
  private final double logPeak;
  private final LeftTail tail;

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
    RateRange range = new RateRange(data, unit, halvings, shape, lowMean, highMean, rough);
    stride = range.stride();
    step = range.step();
    first = range.first();
    logLikelihood = range.logLikelihood();
    rate = range.rate();
    logPeak = Arrays.stream(logLikelihood).max().orElseThrow();
    likelihood = new double[rate.length];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = Math.exp(logLikelihood[i] - logPeak);
    }
    tail =
        range.flat() ? LeftTail.of(rate[0], step, shape + data.lost, data.exposure) : LeftTail.NONE;
  }

  /** Number of points, the tail not counted. */
  int count() {
    return rate.length;
  }

  /** Lattice number of the first point. */
  int first() {
    return first;
  }

  /** Rate at a point, pieces per hour. */
  double rate(int i) {
    return rate[i];
  }

  /** What stands for the rates below the first point. */
  LeftTail tail() {
    return tail;
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
    double sum = rest(kernel, mean);
    int end = Math.min(likelihood.length, kernel.end(mean, first, stride));
    double[] density = kernel.density();
    int k = kernel.index(mean, first);
    for (int i = 0; i < end; i++) {
      sum += likelihood[i] * density[k];
      k += stride;
    }
    return sum;
  }

  /**
   * ln of the terms of the sum, for where data and family are so far apart that it underflows. Then
   * the likelihood is steep, so that there is no tail.
   */
  private double[] logTerms(GammaKernel kernel, int mean) {
    double[] logs = new double[rate.length];
    for (int i = 0; i < rate.length; i++) {
      logs[i] = logLikelihood[i] - logPeak + kernel.logDensity(first + i * stride - mean);
    }
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

  /** The term of the tail. */
  private double rest(GammaKernel kernel, int mean) {
    int k = kernel.index(mean, first);
    if (tail.weight() == 0 || k >= kernel.density().length) {
      return 0;
    }
    double density = kernel.density()[k];
    double pull = kernel.pull(mean);
    return tail.weight() * likelihood[0] * density * (1 + pull * (rate[0] - tail.rate()));
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
    out[likelihood.length] += each * rest(kernel, mean);
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
    double rest = rest(kernel, mean);
    double sum = rest;
    double product = rest * values[likelihood.length];
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
    double rest = rest(kernel, mean);
    double sum = rest;
    double average = rest * tail.logRate();
    double square = rest * (tail.logVariance() + tail.logRate() * tail.logRate());
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
