package sparewell.rates;

/**
 * One set of hyperparameters with its weight.
 *
 * @param weight the weights of all draws sum to 1
 * @param newCover multiplier of a cover never logged
 * @param posterior what is known of the rates then
 */
record Draw(double weight, double newCover, RatePosterior posterior) {
  /** Multiplier of a cover. */
  double multiplier(int cover) {
    if (cover == Observation.MIX) {
      return 1;
    }
    return cover == Observation.NEVER_LOGGED ? newCover : posterior.hyper().multiplier[cover];
  }
}
