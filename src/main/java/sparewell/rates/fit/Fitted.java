package sparewell.rates.fit;

import java.util.List;

/**
 * Single values of a fit, from which losses of a trip are expected: about how far it lies off, and
 * how much it tells.
 *
 * @param rate mean rate of each style, pieces per hour
 * @param size geometric mean of the size for one day
 * @param shape mean shape of the rates within a family
 * @param multiplier mean multiplier of each cover
 */
record Fitted(double[] rate, double size, double shape, double[] multiplier) {
  private static final double NONE = 1e-12;

  /** From weighted draws. */
  static Fitted of(List<HyperPosterior.Draw> draws, double[] rate, int covers) {
    double logSize = 0;
    double shape = 0;
    double[] multiplier = new double[covers];
    for (HyperPosterior.Draw draw : draws) {
      logSize += draw.weight() * Math.log(draw.given().hyper().size);
      shape += draw.weight() * draw.given().hyper().shape;
      for (int c = 0; c < covers; c++) {
        multiplier[c] += draw.weight() * draw.multiplier(c);
      }
    }
    return new Fitted(rate, Math.exp(logSize), shape, multiplier);
  }

  /** Pieces expected to be lost, &gt; 0. */
  double expected(Observation one) {
    double factor = one.cover() < 0 ? 1 : multiplier[one.cover()];
    return Math.max(NONE, rate[one.style()] * one.hours() * factor);
  }

  /** Information on the log rate, as one trip of the style has it. */
  double information(Observation one) {
    double expected = expected(one);
    return expected / (1 + expected / (size * one.days()));
  }
}
