package sparewell.rates.fit;

/**
 * The rate of a style on the next trip, as weighted points: the rate over the log, and how far it
 * may have {@linkplain Wander wandered} since.
 *
 * <p>The log rate wanders by the difference of two Poisson counts of steps, which stays on the
 * lattice of the points, has the very variance asked for, keeps the mean rate as it is, and comes
 * near a normal distribution where steps are small.
 *
 * @see "Johnson, Kemp, Kotz, Univariate Discrete Distributions, 3rd ed., sec. 4.12.3 (from memory)"
 */
final class RatePoints {
  private static final double NO_WANDER = 1e-9;
  private static final double LEAST_CHANCE = 1e-12;
  private static final double SMOOTH = 0.5; // of the walk's standard deviation, between points

  private final double logFirst;
  private final double step;
  private final double[] rate;
  private final double[] weight; // the last one is that of the tail
  private final LeftTail tail;
  private final double tailWidth;
  private final double[] chance; // of -reach, ..., reach steps
  private final int reach;
  private final int stride;

  /**
   * Lets a rate wander.
   *
   * @param nodes points of the rate over the log
   * @param weights theirs; one more than there are points, the last for the tail, which stays
   * @param variance of the log rate on the next trip given that over the log
   */
  RatePoints(RateNodes nodes, double[] weights, double variance) {
    double fine = nodes.step();
    tail = nodes.tail();
    chance = variance > NO_WANDER ? chances(variance, fine) : new double[] {1};
    reach = chance.length / 2;
    // A walk over many steps leaves a curve so smooth that fewer points will do.
    stride = Math.max(1, (int) (SMOOTH * Math.sqrt(variance) / fine));
    step = stride * fine;
    tailWidth = 2 * (Math.log(nodes.rate(0)) - tail.logRate());
    logFirst = Math.log(nodes.rate(0)) - reach * fine;
    int points = weights.length - 1;
    rate = new double[(points - 1 + 2 * reach) / stride + 2];
    weight = new double[rate.length];
    double grow = Math.exp(step);
    double next = Math.exp(logFirst);
    for (int k = 0; k < rate.length - 1; k++) {
      rate[k] = next;
      next *= grow;
      for (int i = first(k); i < Math.min(points, k * stride + 1); i++) {
        weight[k] += stride * weights[i] * chance[k * stride - i];
      }
    }
    rate[rate.length - 1] = tail.rate();
    weight[rate.length - 1] = weights[points];
  }

  /** The first point over the log from which the walk reaches a point. */
  private int first(int k) {
    return Math.max(0, k * stride - 2 * reach);
  }

  /** Chances of so many steps, as many up as down. */
  private static double[] chances(double variance, double step) {
    // Means up and down: (up + down) step^2 = variance, and up (e^step - 1) = down (1 - e^-step).
    double up = variance / (step * step * (1 + Math.exp(step)));
    double x = 2 * up * Math.exp(step / 2);
    // I_j(x), modified Bessel functions, by Miller's downward recurrence, up to a common factor.
    int most = 12 + (int) (8.5 * Math.sqrt(x));
    double[] bessel = new double[most + 2];
    bessel[most] = 1e-150;
    for (int j = most; j > 0; j--) {
      bessel[j - 1] = bessel[j + 1] + 2 * j / x * bessel[j];
    }
    double sum = bessel[0];
    for (int j = 1; j <= most; j++) {
      sum += bessel[j] * 2 * Math.cosh(j * step / 2);
    }
    int far = most;
    while (bessel[far] * Math.exp(far * step / 2) < LEAST_CHANCE * sum) {
      far--;
    }
    double[] chances = new double[2 * far + 1];
    for (int j = -far; j <= far; j++) {
      chances[far + j] = bessel[Math.abs(j)] * Math.exp(-j * step / 2) / sum;
    }
    return chances;
  }

  /** Number of points, the tail included as the last. */
  int count() {
    return weight.length;
  }

  /** Weight of a point; they sum to 1. */
  double weight(int i) {
    return weight[i];
  }

  /** Rate of a point, pieces per hour. */
  double rate(int i) {
    return rate[i];
  }

  /** Log rate of the first point. */
  double logFirst() {
    return logFirst;
  }

  /** Distance of the points in log rate. */
  double step() {
    return step;
  }

  /** Mean log rate of what the tail stands for. */
  double logTail() {
    return tail.logRate();
  }

  /** Width in log rate of what the tail stands for. */
  double tailWidth() {
    return tailWidth;
  }

  /**
   * Expectation of a function of the rate on the next trip, at the points of the rate over the log.
   *
   * @param points how many there are of the latter
   * @param values at each of the former, the tail's last
   * @return one more than points, the tail's last
   */
  double[] expectation(int points, double[] values) {
    double[] before = new double[points + 1];
    for (int k = 0; k < values.length - 1; k++) {
      for (int i = first(k); i < Math.min(points, k * stride + 1); i++) {
        before[i] += stride * chance[k * stride - i] * values[k];
      }
    }
    before[points] = values[values.length - 1];
    return before;
  }
}
