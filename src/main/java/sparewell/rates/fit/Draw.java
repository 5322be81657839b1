package sparewell.rates.fit;

/** One set of hyperparameters with its weight, and what is known of the rates then. */
final class Draw {
  private final double weight;
  private final double newCover;
  private final RatePosterior posterior;
  private final Wander.Walked wander;

  /**
   * Puts them together.
   *
   * @param weight the weights of all draws sum to 1
   * @param newCover multiplier of a cover never logged
   * @param posterior what is known of the rates over the log
   * @param wander how far each style's log rate walks from that over the log
   */
  Draw(double weight, double newCover, RatePosterior posterior, Wander.Walked wander) {
    this.weight = weight;
    this.newCover = newCover;
    this.posterior = posterior;
    this.wander = wander;
  }

  /** The same with rates that wander so much. */
  Draw wandering(Wander.Walked walked) {
    return new Draw(weight, newCover, posterior, walked);
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
    return wander(style, 0);
  }

  /**
   * Variance of a style's log rate given that over the log.
   *
   * @param beyond trips beyond the next one
   */
  double wander(int style, double beyond) {
    return wander.variance(style, beyond);
  }

  /** The rate of a style on the next trip, at the mix of covers. */
  RatePoints rate(int style) {
    return rate(style, 0);
  }

  /** The same so many trips beyond the next one. */
  RatePoints rate(int style, double beyond) {
    return new RatePoints(
        posterior.nodes(style), posterior.weights(style), wander.variance(style, beyond));
  }

  /** Multiplier of a cover. */
  double multiplier(int cover) {
    if (cover == Observation.MIX) {
      return 1;
    }
    return cover == Observation.NEVER_LOGGED ? newCover : posterior.hyper().multiplier[cover];
  }
}
