package sparewell.rates.fit;

/**
 * Weak priors before the first trip: a location and a spread for each hyperparameter on its log
 * scale. Our own choice; its effect is measured by the calibration benchmark.
 *
 * @param logRateCentre ln of the pieces of a typical style lost per hour
 * @param logRateSpread scale of that, as a Student t with {@link #RATE_DEGREES} degrees of freedom,
 *     whose heavy tails let go where the data speak
 * @param logFamilyCentre ln of the standard deviation of the log rate between families
 * @param logFamilySpread standard deviation of that
 * @param logStyleCentre ln of the coefficient of variation of rates within a family
 * @param logStyleSpread standard deviation of that
 * @param logSizeCentre ln of the size of a day's extra variation
 * @param logSizeSpread standard deviation of that
 * @param coverSpread standard deviation of the log multiplier of a cover
 * @param walk of the variance by which a log rate walks from trip to trip
 */
public record Hyperprior(
    double logRateCentre,
    double logRateSpread,
    double logFamilyCentre,
    double logFamilySpread,
    double logStyleCentre,
    double logStyleSpread,
    double logSizeCentre,
    double logSizeSpread,
    double coverSpread,
    Walk walk) {
  /** Degrees of freedom of the prior of the common log rate. */
  static final double RATE_DEGREES = 5;

  /** Standard deviation of the common log rate, over its scale. */
  public static final double RATE_SPREAD = Math.sqrt(RATE_DEGREES / (RATE_DEGREES - 2));

  /**
   * Prior of the variance of a log rate's walk.
   *
   * @param logCentre ln of its variance for each trip; minus infinity where rates stay
   * @param logSpread standard deviation of that
   */
  public record Walk(double logCentre, double logSpread) {
    /** Rates stay as they are from trip to trip. */
    public static final Walk NONE = new Walk(Double.NEGATIVE_INFINITY, 0);
  }

  /**
   * The weak prior in use: a typical style loses around 0.6 pieces in 10 hours; families differ by
   * a factor of about 1.5, styles within a family likewise; a day's losses vary about as much again
   * as chance alone would have them; in 40 trips a rate walks by about a quarter, perhaps by half.
   */
  public static final Hyperprior WEAK =
      new Hyperprior(
          Math.log(0.06),
          0.7,
          Math.log(0.4),
          0.8,
          Math.log(0.5),
          0.7,
          Math.log(2),
          1.0,
          0.5,
          new Walk(Math.log(0.0015), 1.5));
}
