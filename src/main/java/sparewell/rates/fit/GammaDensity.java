package sparewell.rates.fit;

import org.apache.commons.math3.special.Gamma;

/**
 * The density of a log rate around the log mean of its family, u = ln(rate / mean), at the points
 * of the grid times the step: a<sup>a</sup>/&Gamma;(a) exp(a u - a e<sup>u</sup>), that of ln of a
 * gamma variable with shape a and mean 1.
 *
 * @param shape a, &gt; 0
 * @param least number of the least u that is asked for
 * @param table from there to where hardly anything is left
 */
record GammaDensity(double shape, int least, double[] table) {
  private static final double VANISHED = 460; // e^-460 of the peak is left out

  /** Tabulates. */
  static GammaDensity of(double shape, int least) {
    double logNorm = shape * Math.log(shape) - Gamma.logGamma(shape) + Math.log(FitData.STEP);
    double end = 0;
    for (int i = 0; i < 20; i++) {
      end = Math.log1p(end + VANISHED / shape);
    }
    double[] table = new double[Math.max(1, (int) (end / FitData.STEP) - least + 1)];
    for (int k = 0; k < table.length; k++) {
      double u = (least + k) * FitData.STEP;
      table[k] = Math.exp(shape * (u - Math.exp(u)) + logNorm);
    }
    return new GammaDensity(shape, least, table);
  }

  /**
   * Mass at the first point of a style's stretch: its own and that of the endless rest to its left,
   * where expected losses are as good as none and the terms fall by e<sup>-power step</sup>.
   *
   * @param power a and the pieces lost
   * @param step of the style
   */
  static double rest(double power, double step) {
    return -1 / Math.expm1(-power * step);
  }
}
