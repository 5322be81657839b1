package sparewell.rates.record;

import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;
import sparewell.rates.history.StyleUse;

/** Losses per hour so far, style by style; a style not yet used has that of all. */
final class RawRates {
  private static final double NO_EXTRA_VARIATION = 1e9;

  private final double[] lost;
  private final double[] hours;
  private double allLost;
  private double allHours;

  RawRates(int styles) {
    lost = new double[styles];
    hours = new double[styles];
  }

  void learn(StyleUse use) {
    lost[use.style()] += use.lostPieces();
    hours[use.style()] += use.hours();
    allLost += use.lostPieces();
    allHours += use.hours();
  }

  /** Losses of a style over its hours on a trip, Poisson at its rate so far. */
  CountDistribution losses(StyleUse use) {
    double known = hours[use.style()];
    double rate = known > 0 ? lost[use.style()] / known : allHours > 0 ? allLost / allHours : 0;
    CountMixture mixture = new CountMixture();
    mixture.add(1, rate * use.hours(), NO_EXTRA_VARIATION);
    return mixture.distribution();
  }
}
