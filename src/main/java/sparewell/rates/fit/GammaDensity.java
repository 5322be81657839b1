package sparewell.rates.fit;

import org.apache.commons.math3.special.Gamma;

/**
 * The density of a log rate around the log mean of its family, u = ln(rate / mean), at the points
 * of the grid times the step: a<sup>a</sup>/&Gamma;(a) exp(a u - a e<sup>u</sup>), that of ln of a
 * gamma variable with shape a and mean 1.
 */
final class GammaDensity {
  private static final double VANISHED = 460; // e^-460 of the peak is left out

  private final double shape;
  private final double step;
  private final int least; // number of u at the first entry
  private final double[] density;

  /**
   * Tabulates.
   *
   * @param shape a, &gt; 0
   * @param step of the grid
   * @param least number of the least u that will be asked for
   */
  GammaDensity(double shape, double step, int least) {
    this.shape = shape;
    this.step = step;
    this.least = least;
    double logNorm = shape * Math.log(shape) - Gamma.logGamma(shape) + Math.log(step);
    double end = 0;
    for (int i = 0; i < 20; i++) {
      end = Math.log1p(end + VANISHED / shape);
    }
    density = new double[Math.max(1, (int) (end / step) - least + 1)];
    for (int k = 0; k < density.length; k++) {
      double u = (least + k) * step;
      density[k] = Math.exp(shape * (u - Math.exp(u)) + logNorm);
    }
  }

  double shape() {
    return shape;
  }

  int place(int number) {
    return number - least;
  }

  double[] table() {
    return density;
  }

  /**
   * Mass at the first point of a style's stretch: its own and that of the endless rest to its left,
   * where expected losses are as good as none and the terms fall by e<sup>-power step</sup>.
   *
   * @param power a and the pieces lost
   * @param stride points of the grid from one to the next
   */
  double rest(double power, int stride) {
    return -1 / Math.expm1(-power * step * stride);
  }
}
