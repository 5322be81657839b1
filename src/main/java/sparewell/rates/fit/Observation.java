package sparewell.rates.fit;

import sparewell.numerics.NegativeBinomial;

/**
 * Hours and losses of one style on one trip.
 *
 * @param style number of the style, from 0
 * @param trip number of the trip in time, from 0
 * @param hours hours of exposure, &gt; 0
 * @param days days of the trip, &gt; 0
 * @param cover number of the category of cover, or {@link #MIX} where none was logged
 * @param lostPieces pieces lost, &ge; 0
 * @param atLeast whether the angler ran out, so that the true demand was at least that
 * @param weight weight of the log-likelihood, in (0, 1]
 */
public record Observation(
    int style,
    int trip,
    double hours,
    double days,
    int cover,
    int lostPieces,
    boolean atLeast,
    double weight) {
  /** Cover not logged: counts as the mix of covers logged. */
  public static final int MIX = -1;

  /** A cover that no trip has: only its prior is known. */
  public static final int NEVER_LOGGED = -2;

  public Observation {
    if (trip < 0
        || !(hours > 0)
        || !(days > 0)
        || !(weight > 0 && weight <= 1)
        || lostPieces < 0
        || cover < NEVER_LOGGED) {
      throw new IllegalArgumentException(
          "hours " + hours + ", days " + days + ", weight " + weight + ", lost " + lostPieces);
    }
  }

  /**
   * Multiplies weights of rates with the likelihood of what was lost, and makes them sum to 1.
   *
   * @param rate at each point, pieces per hour
   * @param effectiveHours hours times the multiplier of the cover
   * @param size of the negative binomial for these days
   * @param after receives the weights; what had less than 1e-9 before has none
   * @return the chance of what was lost; where it is too small for a number, weights stay
   */
  double learn(double[] before, double[] rate, double effectiveHours, double size, double[] after) {
    double coefficient = NegativeBinomial.logCoefficient(lostPieces, size);
    double sum = 0;
    for (int i = 0; i < rate.length; i++) {
      if (before[i] > 1e-9) {
        double mean = rate[i] * effectiveHours;
        double log =
            atLeast
                ? NegativeBinomial.logAtLeast(lostPieces, mean, size)
                : coefficient
                    + (lostPieces > 0 ? lostPieces * Math.log(mean) : 0)
                    - (lostPieces + size) * Math.log(1 + mean / size);
        after[i] = before[i] * Math.exp(log);
        sum += after[i];
      }
    }
    for (int i = 0; i < rate.length; i++) {
      after[i] = sum > 0 ? after[i] / sum : before[i];
    }
    return sum;
  }
}
