package sparewell.rates.fit;

/** Priors for tests. */
final class Priors {
  private Priors() {}

  /** The weak prior, but for how rates walk. */
  static Hyperprior weak(Hyperprior.Walk walk) {
    Hyperprior weak = Hyperprior.WEAK;
    return new Hyperprior(
        weak.logRateCentre(),
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
