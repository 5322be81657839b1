package sparewell.rates.fit;

import java.util.Comparator;
import java.util.List;

/**
 * Variance by which log rates walk from the log to the trips ahead: a local-level model.
 *
 * <p>A log tells the mean rate over its trips; what is asked for is the rate on the next one. The
 * log rate is taken as a random walk with variance q for each trip. Over an even log of n trips,
 * that moves the rate on the next trip off the mean by a variance of about q n/3. What is known of
 * q comes from its prior and from the losses of all styles, trip by trip, in a normal approximation
 * around the fitted rates (Kalman filter). Few losses tell next to nothing of it, long logs much. A
 * trip on which far more was lost than expected, a box overboard, tells of no walk: its error is
 * cut off. And the walk is held back, so that its variance never passes a bound.
 *
 * <p>The rates themselves are fitted as if they stayed, so only their intervals and the predictions
 * know of it. Who sets a half-life has old trips fade, and less left to walk.
 *
 * @see "Harvey, Forecasting, Structural Time Series Models and the Kalman Filter (1989), sec. 3.4
 *     (likelihood by one-step errors; from memory)"
 * @param perTrip q, posterior mean
 * @param trips steps from each style's rate over the log to that on the next trip; 0 for a style
 *     without trips, whose rate is its family's of today
 */
record RandomWalk(double perTrip, double[] trips) {
  private static final int GRID = 16; // points of q on either side of the centre
  private static final double REACH = 4; // prior standard deviations
  private static final double UNKNOWN = 1e3; // variance of the log rate before the first trip
  private static final double MOST = 4; // standard deviations that an error counts for
  private static final double BOUND = 0.25; // of the variance: a factor of 1.6 either way
  private static final double NARROW = 0.6; // of a squared step: a normal curve would be too narrow

  /** The trips of one style, in time. */
  record Trips(int[] number, double[] error, double[] information, double[] weight) {}

  /** Evidence of the log on the walk, given the mean rates as fitted. */
  static RandomWalk of(
      FitData data, List<HyperPosterior.Draw> draws, double[] rate, Hyperprior prior) {
    RandomWalk none = new RandomWalk(0, new double[rate.length]);
    if (prior.walk().equals(Hyperprior.Walk.NONE)) {
      return none;
    }
    double logSize = 0;
    double shape = 0;
    double[] multiplier = new double[data.mix.length];
    for (HyperPosterior.Draw draw : draws) {
      logSize += draw.weight() * Math.log(draw.given().hyper().size());
      shape += draw.weight() * draw.given().hyper().shape();
      for (int c = 0; c < multiplier.length; c++) {
        multiplier[c] += draw.weight() * draw.multiplier(c);
      }
    }
    Trips[] styles = new Trips[rate.length];
    int next = 0;
    for (int s = 0; s < styles.length; s++) {
      styles[s] = trips(data.styles[s].trips, rate[s], multiplier, Math.exp(logSize));
      for (int number : styles[s].number) {
        next = Math.max(next, number + 1);
      }
    }
    for (int s = 0; s < styles.length; s++) {
      none.trips[s] = tripsToWalk(styles[s], next, shape);
    }
    return new RandomWalk(perTrip(styles, prior.walk()), none.trips);
  }

  /** Losses over those expected, less 1, are about what the log rate is off by. */
  private static Trips trips(List<Observation> log, double rate, double[] multiplier, double size) {
    List<Observation> inTime =
        log.stream().sorted(Comparator.comparingInt(Observation::trip)).toList();
    int n = inTime.size();
    Trips trips = new Trips(new int[n], new double[n], new double[n], new double[n]);
    for (int i = 0; i < n; i++) {
      Observation one = inTime.get(i);
      double factor = one.cover() < 0 ? 1 : multiplier[one.cover()];
      double expected = Math.max(1e-12, rate * one.hours() * factor);
      trips.number[i] = one.trip();
      trips.weight[i] = one.weight();
      trips.information[i] = expected / (1 + expected / (size * one.days()));
      trips.error[i] =
          one.atLeast()
              ? Double.NaN
              : Math.min(one.lostPieces() / expected - 1, MOST / Math.sqrt(trips.information[i]));
    }
    return trips;
  }

  private static double perTrip(Trips[] styles, Hyperprior.Walk prior) {
    double[] q = new double[2 * GRID + 1];
    double[] log = new double[q.length];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < q.length; i++) {
      double z = REACH * (i - GRID) / GRID;
      q[i] = Math.exp(prior.logCentre() + prior.logSpread() * z);
      log[i] = -z * z / 2;
      for (Trips style : styles) {
        log[i] += logLikelihood(style, q[i]);
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
  static double logLikelihood(Trips style, double q) {
    double sum = 0;
    double level = 0;
    double variance = UNKNOWN;
    int last = 0;
    for (int i = 0; i < style.number.length; i++) {
      if (!Double.isNaN(style.error[i])) {
        variance += q * (style.number[i] - last);
        last = style.number[i];
        double spread = variance + 1 / style.information[i];
        double surprise = style.error[i] - level;
        sum -= (Math.log(spread) + surprise * surprise / spread) / 2;
        level += variance / spread * surprise;
        variance *= 1 / (style.information[i] * spread);
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
  static double tripsToWalk(Trips style, int next, double family) {
    double all = family;
    for (int i = 0; i < style.number.length; i++) {
      all += style.weight[i] * style.information[i];
    }
    double sum = 0;
    double passed = 0;
    for (int i = 0; i < style.number.length; i++) {
      passed += style.weight[i] * style.information[i] / all;
      int until = i + 1 < style.number.length ? style.number[i + 1] : next;
      sum += (until - style.number[i]) * passed * passed;
    }
    return sum;
  }

  /**
   * Variance of a style's log rate given that over the log; it never passes the bound.
   *
   * @param beyond trips beyond the next one, &ge; 0
   */
  double variance(int style, double beyond) {
    return -BOUND * Math.expm1(-perTrip * (trips[style] + beyond) / BOUND);
  }

  /**
   * Chances that a log rate walks by -m, ..., m points of the grid: normal, so placed that the mean
   * rate stays; for less than a step, those of one step up or down with that mean and variance.
   */
  static double[] chances(double variance, double step) {
    double moves = variance / (step * step);
    if (moves < NARROW) {
      double up = moves / (1 + Math.exp(step));
      double down = up * Math.exp(step);
      return moves > 0 ? new double[] {down, 1 - up - down, up} : new double[] {1};
    }
    int m = 1 + (int) (REACH * Math.sqrt(moves));
    double[] chance = new double[2 * m + 1];
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      double away = (i - m) * step + variance / 2;
      chance[i] = Math.exp(-away * away / (2 * variance));
      sum += chance[i];
    }
    for (int i = 0; i < chance.length; i++) {
      chance[i] /= sum;
    }
    return chance;
  }

  /** Weights on the grid after the walk, on a stretch wider by m points on either side. */
  static double[] forward(double[] weights, double[] chances) {
    double[] out = new double[weights.length + chances.length - 1];
    for (int i = 0; i < weights.length; i++) {
      for (int j = 0; j < chances.length && weights[i] != 0; j++) {
        out[i + j] += weights[i] * chances[j];
      }
    }
    return out;
  }
}
