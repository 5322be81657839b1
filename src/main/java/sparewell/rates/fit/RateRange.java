package sparewell.rates.fit;

import java.util.Arrays;

/**
 * The stretch of log rates over which the likelihood of one style counts, whichever mean its family
 * may have, and the log-likelihood there at equal steps.
 *
 * <p>A first guess, the range of a gamma density, is widened until what is left out on either side
 * is below e<sup>-21</sup> of the peak, or the likelihood has become flat on the left.
 */
final class RateRange {
  private static final double DEPTH = 21; // e^-21 of the peak is left out on either side
  private static final double ROUGH_DEPTH = 12;
  private static final double FLAT = 2e-5;
  private static final int MOST = 6000;

  private final double shape;
  private final double depth;
  private final int stride;
  private final double step;
  private final int first;
  private final double[] logLikelihood;
  private final double[] rate;
  private final boolean flat;

  /**
   * Finds the range.
   *
   * @param unit step of the lattice, in log rate
   * @param halvings halvings of the widest step that make the unit
   * @param shape shape a of the gamma distribution within the family
   * @param lowMean least ln family mean that will be asked for
   * @param highMean largest
   * @param rough whether integrals need be right to 1e-4 only
   */
  RateRange(
      StyleHistory.Likelihood data,
      double unit,
      int halvings,
      double shape,
      double lowMean,
      double highMean,
      boolean rough) {
    this.shape = shape;
    depth = rough ? ROUGH_DEPTH : DEPTH;
    double power = shape + data.pieces;
    stride = Math.max(1, (int) (RateNodes.step(power, rough) / unit + 1e-9));
    step = stride * unit;
    double slopeLow = shape * Math.exp(-lowMean);
    double slopeHigh = shape * Math.exp(-highMean);
    double flatRate = FLAT / (data.exposure + slopeLow);
    int flattest = (int) Math.floor(Math.log(flatRate) / step) - 1;
    // A gamma density, from its third-order expansion.
    double wide = Math.sqrt(2 * depth / power);
    double skew = depth / (3 * power);
    double from = Math.log(power / (data.exposure + slopeLow)) - 1.1 * (wide + skew);
    double to = Math.log(power / (data.exposure + slopeHigh)) + 1.1 * wide;
    int left = (int) Math.max(flattest, Math.floor(from / step));
    int right = Math.max(left + 4, (int) Math.ceil(to / step));
    while (true) {
      double[] rates = rates(left, right);
      double[] logs = data.at(halvings, left * stride, stride, rates);
      int begin = begin(logs, rates, left, slopeLow);
      int end = end(logs, rates, left, slopeHigh);
      int more = Math.max(4, (right - left) / 3);
      boolean leftDone = begin > 0 || rates[0] <= flatRate;
      if (right - left > MOST || leftDone && end < logs.length) {
        begin = Math.max(0, begin - 1);
        first = (left + begin) * stride;
        logLikelihood = Arrays.copyOfRange(logs, begin, end);
        rate = Arrays.copyOfRange(rates, begin, end);
        flat = rate[0] <= flatRate;
        return;
      }
      left = leftDone ? left : Math.max(left - more, flattest);
      right = end < logs.length ? right : right + more;
    }
  }

  private double[] rates(int left, int right) {
    double[] rates = new double[right - left + 1];
    double grow = Math.exp(step);
    double r = Math.exp(left * step);
    for (int i = 0; i < rates.length; i++) {
      rates[i] = r;
      r *= grow;
    }
    return rates;
  }

  /** The first point that counts when the family mean is lowest. */
  private int begin(double[] logs, double[] rates, int left, double slope) {
    double best = best(logs, rates, left, slope);
    int i = 0;
    while (logs[i] + shape * (left + i) * step - slope * rates[i] < best - depth) {
      i++;
    }
    return i;
  }

  /** One more than the last point that counts when the family mean is highest. */
  private int end(double[] logs, double[] rates, int left, double slope) {
    double best = best(logs, rates, left, slope);
    int i = logs.length;
    while (logs[i - 1] + shape * (left + i - 1) * step - slope * rates[i - 1] < best - depth) {
      i--;
    }
    return i;
  }

  private double best(double[] logs, double[] rates, int left, double slope) {
    double best = Double.NEGATIVE_INFINITY;
    double rise = shape * step;
    double term = rise * left;
    for (int i = 0; i < logs.length; i++) {
      double value = logs[i] + term - slope * rates[i];
      term += rise;
      if (value > best) {
        best = value;
      }
    }
    return best;
  }

  /** Lattice number of the first point. */
  int first() {
    return first;
  }

  /** Distance of the points in the lattice. */
  int stride() {
    return stride;
  }

  /** Distance of the points in log rate. */
  double step() {
    return step;
  }

  /** ln of the likelihood at each point. */
  double[] logLikelihood() {
    return logLikelihood;
  }

  /** Rate at each point, pieces per hour. */
  double[] rate() {
    return rate;
  }

  /** Whether the likelihood and the family's density are powers of the rate left of the range. */
  boolean flat() {
    return flat;
  }
}
