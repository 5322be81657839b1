package sparewell.rates.fit;

/**
 * One set of hyperparameters, decoded from a point in units of prior standard deviations.
 *
 * <p>The order of a point: log rate of a typical style, ln family spread, ln style spread, ln size,
 * then one log multiplier for each cover logged. Rates within a family are skewed, so their mean
 * lies a factor &radic;(1 + CV&sup2;) above a typical one (exactly so where they are log-normal).
 *
 * @param logRate ln of the mean rate between families, per hour
 * @param familySpread standard deviation of a family's log mean rate
 * @param shape a of the gamma distribution of rates within a family
 * @param size of the negative binomial for one day
 * @param multiplier of each cover; their hours-weighted mean is 1
 */
record Hyper(double logRate, double familySpread, double shape, double size, double[] multiplier) {
  /** Hyperparameters other than covers. */
  static final int COMMON = 4;

  /**
   * Decodes a point; what lies beyond the range in which sums are right counts as its rim. What
   * other logs tell of rates is at their mix of covers, so that the common log rate then moves with
   * this log's mix.
   */
  static Hyper at(double[] z, Hyperprior prior, double[] mix, Beliefs others) {
    double styleSpread =
        within(0.05, 3.5, Math.exp(prior.logStyleCentre() + prior.logStyleSpread() * z[2]));
    double[] multiplier = new double[z.length - COMMON];
    double mean = 0;
    for (int c = 0; c < multiplier.length; c++) {
      double log =
          others.known()
              ? others.covers().get(c).logCentre()
                  + others.covers().get(c).logSpread() * z[COMMON + c]
              : prior.coverSpread() * z[COMMON + c];
      multiplier[c] = Math.exp(within(-5, 5, log));
      mean += mix[c] * multiplier[c];
    }
    mean = mean > 0 ? mean : 1;
    for (int c = 0; c < multiplier.length; c++) {
      multiplier[c] /= mean;
    }
    return new Hyper(
        within(
            -25,
            25,
            prior.logRateCentre()
                + prior.logRateSpread() * z[0]
                + (others.known() ? Beliefs.unlike(z[0]) : 0)
                + Math.log1p(styleSpread * styleSpread) / 2
                + (others.known() ? Math.log(mean) : 0)),
        within(0.005, 3, Math.exp(prior.logFamilyCentre() + prior.logFamilySpread() * z[1])),
        1 / (styleSpread * styleSpread),
        within(0.01, 1e4, Math.exp(prior.logSizeCentre() + prior.logSizeSpread() * z[3])),
        multiplier);
  }

  private static double within(double least, double most, double value) {
    return Math.max(least, Math.min(most, value));
  }

  /** ln of the prior density of a point, up to a constant. */
  static double logPrior(double[] z) {
    double degrees = Hyperprior.RATE_DEGREES;
    double sum = -(degrees + 1) / 2 * Math.log1p(z[0] * z[0] / degrees);
    for (int i = 1; i < z.length; i++) {
      sum -= z[i] * z[i] / 2;
    }
    return sum;
  }
}
