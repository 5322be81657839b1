package sparewell.rates.fit;

/** One set of hyperparameters with its weight, and what is known of the rates then. */
final class Draw {
  private final double weight;
  private final double newCover;
  private final RatePosterior posterior;
  private final double[] wander;

  /**
   * Puts them together.
   *
   * @param weight the weights of all draws sum to 1
   * @param newCover multiplier of a cover never logged
   * @param posterior what is known of the rates over the log
   * @param wander variance of each style's log rate on the next trip given that over the log
   */
  Draw(double weight, double newCover, RatePosterior posterior, double[] wander) {
    this.weight = weight;
    this.newCover = newCover;
    this.posterior = posterior;
    this.wander = wander;
  }

  /** The same with rates that wander so much. */
  Draw wandering(double[] variances) {
    return new Draw(weight, newCover, posterior, variances);
  }

  double weight() {
    return weight;
  }

  double newCover() {
    return newCover;
  }

  RatePosterior posterior() {
    return posterior;
  }

  /** Variance of a style's log rate on the next trip given that over the log. */
  double wander(int style) {
    return wander[style];
  }

  /** The rate of a style on the next trip, at the mix of covers. */
  RatePoints rate(int style) {
    return new RatePoints(posterior.nodes(style), posterior.weights(style), wander[style]);
  }

  /** Multiplier of a cover. */
  double multiplier(int cover) {
    if (cover == Observation.MIX) {
      return 1;
    }
    return cover == Observation.NEVER_LOGGED ? newCover : posterior.hyper().multiplier[cover];
  }
}
