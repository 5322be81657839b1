package sparewell.rates.fit;

/** Priors for tests. */
final class Priors {
  private Priors() {}

  /** The weak prior, but for how rates walk. */
  static Hyperprior weak(Hyperprior.Walk walk) {
    return weak(Hyperprior.WEAK.logRateCentre(), walk);
  }

  /** The weak prior, but for the centre of rates and how they walk. */
  static Hyperprior weak(double logRateCentre, Hyperprior.Walk walk) {
    Hyperprior weak = Hyperprior.WEAK;
    return new Hyperprior(
        logRateCentre,
        weak.logRateSpread(),
        weak.logFamilyCentre(),
        weak.logFamilySpread(),
        weak.logStyleCentre(),
        weak.logStyleSpread(),
        weak.logSizeCentre(),
        weak.logSizeSpread(),
        weak.coverSpread(),
        walk);
  }
}
