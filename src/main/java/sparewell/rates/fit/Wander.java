package sparewell.rates.fit;

import java.util.Comparator;
import java.util.List;

/**
 * How far rates wander while the log is kept.
 *
 * <p>A log tells the mean rate over its trips; what is asked for is the rate on the next one. The
 * log rate is taken to walk at random, with a variance q for each trip. Over an even log of n
 * trips, that moves the rate on the next trip off the mean by a variance of about q n/3. What is
 * known of q comes from its prior and from the losses of all styles, trip by trip, in a normal
 * approximation around the fitted rates (Kalman filter). Few losses tell next to nothing of it,
 * long logs much. A trip on which far more was lost than expected, a box overboard, tells of no
 * walk: its error is cut off. And a rate stays tied to what it is the rate of: the walk is held
 * back, so that its variance never passes a bound.
 *
 * <p>The rates themselves are fitted as if they stayed, so only their intervals and the predictions
 * know of it. Who sets a half-life has old trips fade, and less left to wander.
 *
 * @see "Harvey, Forecasting, Structural Time Series Models and the Kalman Filter (1989), sec. 3.4
 *     (likelihood by one-step errors; from memory)"
 */
final class Wander {
  private static final int GRID = 16; // points on either side of the centre
  private static final double REACH = 4; // prior standard deviations
  private static final double UNKNOWN = 1e3; // variance of the log rate before the first trip
  private static final double MOST = 4; // standard deviations that an error counts for
  private static final double BOUND = 0.25; // of the variance: a factor of 1.6 either way

  private final int[] trip;
  private final double[] error;
  private final double[] information;
  private final double[] weight;

  /**
   * Of one style.
   *
   * @param trip numbers of its trips, in time
   * @param error of the log rate that each trip alone shows; NaN where it shows none
   * @param information one over the variance of that by chance
   * @param weight of each trip in the fit
   */
  Wander(int[] trip, double[] error, double[] information, double[] weight) {
    this.trip = trip;
    this.error = error;
    this.information = information;
    this.weight = weight;
  }

  /** Losses over those expected, less 1, are about what the log rate is off by. */
  private static Wander of(List<Observation> log, double rate, double[] multiplier, double size) {
    List<Observation> trips =
        log.stream().sorted(Comparator.comparingInt(Observation::trip)).toList();
    double[] error = new double[trips.size()];
    double[] information = new double[error.length];
    for (int i = 0; i < error.length; i++) {
      Observation one = trips.get(i);
      double factor = one.cover() == Observation.MIX ? 1 : multiplier[one.cover()];
      double expected = rate * one.hours() * factor;
      information[i] = expected / (1 + expected / (size * one.days()));
      error[i] =
          one.atLeast()
              ? Double.NaN
              : Math.min(one.lostPieces() / expected - 1, MOST / Math.sqrt(information[i]));
    }
    return new Wander(
        trips.stream().mapToInt(Observation::trip).toArray(),
        error,
        information,
        trips.stream().mapToDouble(Observation::weight).toArray());
  }

  /**
   * How far log rates walk from those over the log.
   *
   * @param perTrip variance by which they walk from trip to trip, &ge; 0
   * @param trips steps from each style's rate over the log to that on the next trip; 0 for a style
   *     without trips, whose rate is its family's of today
   */
  record Walked(double perTrip, double[] trips) {
    /** Rates that stay. */
    static Walked none(int styles) {
      return new Walked(0, new double[styles]);
    }

    /**
     * Variance of a style's log rate given that over the log; it never passes the bound.
     *
     * @param beyond trips beyond the next one, &ge; 0
     */
    double variance(int style, double beyond) {
      return -BOUND * Math.expm1(-perTrip * (trips[style] + beyond) / BOUND);
    }
  }

  /**
   * What the log tells of the walk.
   *
   * @param data what was logged
   * @param draws the rates as fitted
   */
  static Walked walked(FitData data, List<Draw> draws, Hyperprior prior) {
    if (prior.walk().equals(Hyperprior.Walk.NONE)) {
      return Walked.none(data.styles());
    }
    double logSize = 0;
    double shape = 0;
    double[] multiplier = new double[data.mix().length];
    for (Draw draw : draws) {
      logSize += draw.weight() * Math.log(draw.posterior().hyper().size);
      shape += draw.weight() * draw.posterior().hyper().shape;
      for (int c = 0; c < multiplier.length; c++) {
        multiplier[c] += draw.weight() * draw.multiplier(c);
      }
    }
    Wander[] styles = new Wander[data.styles()];
    int next = 0;
    for (int s = 0; s < styles.length; s++) {
      double rate = 0;
      for (Draw draw : draws) {
        rate += draw.weight() * draw.posterior().meanRate(s);
      }
      styles[s] = of(data.trips(s), rate, multiplier, Math.exp(logSize));
      for (Observation one : data.trips(s)) {
        next = Math.max(next, one.trip() + 1);
      }
    }
    double[] trips = new double[styles.length];
    for (int s = 0; s < styles.length; s++) {
      trips[s] = styles[s].tripsToWander(next, shape);
    }
    return new Walked(perTrip(styles, prior.walk()), trips);
  }

  /** Posterior mean of q. */
  private static double perTrip(Wander[] styles, Hyperprior.Walk prior) {
    double[] q = new double[2 * GRID + 1];
    double[] log = new double[q.length];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < q.length; i++) {
      double z = REACH * (i - GRID) / GRID;
      q[i] = Math.exp(prior.logCentre() + prior.logSpread() * z);
      log[i] = -z * z / 2;
      for (Wander style : styles) {
        log[i] += style.logLikelihood(q[i]);
      }
      best = Math.max(best, log[i]);
    }
    double sum = 0;
    double mean = 0;
    for (int i = 0; i < q.length; i++) {
      double weight = Math.exp(log[i] - best);
      sum += weight;
      mean += weight * q[i];
    }
    return mean / sum;
  }

  /**
   * ln of the likelihood of the errors, up to a constant; where they tell much, the first only sets
   * the level.
   *
   * @param q variance by which the log rate walks from trip to trip, &ge; 0
   */
  double logLikelihood(double q) {
    double sum = 0;
    double level = 0;
    double variance = UNKNOWN;
    int last = 0;
    for (int i = 0; i < trip.length; i++) {
      if (!Double.isNaN(error[i])) {
        variance += q * (trip[i] - last);
        last = trip[i];
        double spread = variance + 1 / information[i];
        double surprise = error[i] - level;
        sum -= (Math.log(spread) + surprise * surprise / spread) / 2;
        level += variance / spread * surprise;
        variance *= 1 / (information[i] * spread);
      }
    }
    return sum;
  }

  /**
   * Variance of the walk from the mean over the log, each trip by its weight and information, to
   * the next trip, for q = 1. What the family tells is of today.
   *
   * @param next number of the next trip
   * @param family information of the family
   */
  double tripsToWander(int next, double family) {
    double all = family;
    for (int i = 0; i < trip.length; i++) {
      all += weight[i] * information[i];
    }
    double sum = 0;
    double passed = 0;
    for (int i = 0; i < trip.length; i++) {
      passed += weight[i] * information[i] / all;
      int until = i + 1 < trip.length ? trip[i + 1] : next;
      sum += (until - trip[i]) * passed * passed;
    }
    return sum;
  }
}
