package sparewell.rates.fit;

/**
 * The endless rest of a trapezoidal sum to the left of its first point r, where nothing more is
 * learnt from the data: the terms are powers of the rate, so that the rest is a geometric series
 * with ratio q = e<sup>-power &times; step</sup> and becomes one more point.
 *
 * @param weight sum of the rest over the first term, &ge; 0; 0 where the sum has no such rest
 * @param rate mean rate over the rest, pieces per hour
 * @param logRate mean log rate
 * @param logVariance variance of the log rate
 */
record LeftTail(double weight, double rate, double logRate, double logVariance) {
  /** Where the sum ends at its first point. */
  static final LeftTail NONE = new LeftTail(0, 0, 0, 0);

  /**
   * Sums the series.
   *
   * @param first rate at the first point, so small that the likelihood is linear in it
   * @param step distance of the points in log rate
   * @param power power of the rate that the terms rise with, &gt; 0
   * @param exposure how strongly the log-likelihood falls with the rate, hours
   */
  static LeftTail of(double first, double step, double power, double exposure) {
    double q = Math.exp(-power * step);
    double next = Math.exp(-(power + 1) * step);
    double rate = first * (next / (1 - next)) * ((1 - q) / q);
    return new LeftTail(
        q / (1 - q) * (1 + exposure * (first - rate)),
        rate,
        Math.log(first) - step / (1 - q),
        step * step * q / ((1 - q) * (1 - q)));
  }
}
