package sparewell.rates.fit;

import java.util.Arrays;
import java.util.Optional;

/**
 * The likelihood &lambda;<sup>y</sup> e<sup>-h&lambda;</sup> that stands for another one: together
 * with what was known before, it gives ln &lambda; the same mean and variance. Points are equally
 * spaced in ln &lambda;.
 */
final class GammaShape {
  private static final int STEPS = 24; // of a bisection
  private static final double LEAST = -9; // of ln(h times the mean rate)
  private static final double MOST = 12;

  private final double[] before;
  private final double[] away; // ln rate of each point beside the mean afterwards
  private final double mean;
  private final double variance;

  private record Moments(double mean, double variance) {}

  private GammaShape(double[] before, double[] after, int first, double step) {
    this.before = before;
    away = new double[after.length];
    for (int i = 0; i < away.length; i++) {
      away[i] = (first + i) * step;
    }
    Moments wanted = moments(after);
    mean = wanted.mean();
    variance = wanted.variance();
    for (int i = 0; i < away.length; i++) {
      away[i] -= mean;
    }
  }

  /**
   * Finds it.
   *
   * @param before weights of the points without the likelihood
   * @param after weights with it
   * @param first number of the first point
   * @param step from point to point, in ln &lambda;
   * @param most largest y tried; where more would be needed, that counts
   * @return absent where no h &gt; 0 does, as where the style only ran out
   */
  static Optional<OwnEvidence.Gamma> of(
      double[] before, double[] after, int first, double step, double most) {
    GammaShape shape = new GammaShape(before, after, first, step);
    double few = 0;
    double many = most;
    if (!shape.tooWide(0)) {
      many = 0;
    }
    for (int i = 0; i < STEPS && many > 0; i++) {
      double pieces = (few + many) / 2;
      if (shape.tooWide(pieces)) {
        few = pieces;
      } else {
        many = pieces;
      }
    }
    double log = shape.logHours(many);
    return log > LEAST
        ? Optional.of(new OwnEvidence.Gamma(many, Math.exp(log - shape.mean)))
        : Optional.empty();
  }

  /** True where a likelihood of so many pieces leaves more doubt than there is, or cannot fit. */
  private boolean tooWide(double pieces) {
    double log = logHours(pieces);
    return log <= LEAST || moments(weights(pieces, log)).variance() > variance;
  }

  /** ln of the expected pieces at the mean rate that put the mean right; {@link #LEAST} if none. */
  private double logHours(double pieces) {
    double low = LEAST;
    double high = MOST;
    if (moments(weights(pieces, LEAST)).mean() < 0) {
      return LEAST;
    }
    for (int i = 0; i < STEPS; i++) {
      double log = (low + high) / 2;
      if (moments(weights(pieces, log)).mean() > 0) {
        low = log;
      } else {
        high = log;
      }
    }
    return high;
  }

  private double[] weights(double pieces, double logHours) {
    double[] log = new double[away.length];
    for (int i = 0; i < log.length; i++) {
      log[i] = pieces * away[i] - Math.exp(logHours + away[i]);
    }
    double top = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < log.length; i++) {
      top = before[i] > 0 ? Math.max(top, log[i]) : top;
    }
    for (int i = 0; i < log.length; i++) {
      log[i] = before[i] > 0 ? before[i] * Math.exp(log[i] - top) : 0;
    }
    return log;
  }

  private Moments moments(double[] weights) {
    double all = Arrays.stream(weights).sum();
    double first = 0;
    double second = 0;
    for (int i = 0; i < weights.length; i++) {
      first += weights[i] * away[i] / all;
      second += weights[i] * away[i] * away[i] / all;
    }
    return new Moments(first, second - first * first);
  }
}
