package sparewell.numerics;

import java.util.function.ToDoubleFunction;

/**
 * Maximises a smooth function of a few variables by BFGS with a halving line search and differences
 * for slopes. The variables should be scaled so that a step of 1 is of the order of the function's
 * width.
 *
 * @see "Nocedal &amp; Wright, Numerical Optimization, 2nd ed., ch. 6 (from memory)"
 */
public final class QuasiNewton {
  private static final double STEP = 1e-3;
  private static final double LONGEST = 3; // widths in one step

  private QuasiNewton() {}

  /**
   * Where a climb ended.
   *
   * @param at the place
   * @param value the function there
   * @param converged whether little was left to gain
   */
  public record Peak(double[] at, double value, boolean converged) {}

  /**
   * Climbs from a start.
   *
   * @param f function to maximise; may be minus infinity outside its domain, never NaN
   * @param start where it is finite
   * @param guess about minus the inverse of the second derivatives, positive definite
   * @param tolerance expected gain of the next step below which the climb ends
   * @param most steps after which it ends without convergence
   */
  public static Peak maximise(
      ToDoubleFunction<double[]> f, double[] start, double[][] guess, double tolerance, int most) {
    int n = start.length;
    double[] x = start.clone();
    double value = f.applyAsDouble(x);
    double[] slope = slope(f, x, value);
    double[][] inverse = new double[n][];
    for (int i = 0; i < n; i++) {
      inverse[i] = guess[i].clone();
    }
    for (int step = 0; step < most; step++) {
      double[] way = times(inverse, slope);
      double gain = dot(way, slope);
      if (gain / 2 < tolerance) {
        return new Peak(x, value, Double.isFinite(value));
      }
      double part = Math.min(1, LONGEST / Math.sqrt(dot(way, way)));
      double[] next = plus(x, way, part);
      double there = f.applyAsDouble(next);
      while (!(there >= value + 1e-4 * part * gain) && part > 1e-6) {
        part /= 2.5;
        next = plus(x, way, part);
        there = f.applyAsDouble(next);
      }
      if (!(there > value)) {
        return new Peak(x, value, gain / 2 < 100 * tolerance);
      }
      double[] nextSlope = slope(f, next, there);
      update(inverse, plus(next, x, -1), plus(slope, nextSlope, -1));
      x = next;
      value = there;
      slope = nextSlope;
    }
    return new Peak(x, value, false);
  }

  /**
   * Minus the second derivatives of f, by symmetric differences: right for a cubic, too.
   *
   * @param step width of the differences, &gt; 0
   */
  public static double[][] curvature(ToDoubleFunction<double[]> f, double[] at, double step) {
    int n = at.length;
    double centre = f.applyAsDouble(at);
    double[][] sides = new double[n][n]; // f a step forward along both, plus f a step back
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double[] forward = at.clone();
        double[] back = at.clone();
        forward[i] = at[i] + step;
        forward[j] = at[j] + step;
        back[i] = at[i] - step;
        back[j] = at[j] - step;
        sides[i][j] = f.applyAsDouble(forward) + f.applyAsDouble(back);
      }
    }
    double[][] matrix = new double[n][n];
    for (int i = 0; i < n; i++) {
      matrix[i][i] = (2 * centre - sides[i][i]) / (step * step);
      for (int j = 0; j < i; j++) {
        matrix[i][j] = (sides[i][i] + sides[j][j] - 2 * centre - sides[i][j]) / (2 * step * step);
        matrix[j][i] = matrix[i][j];
      }
    }
    return matrix;
  }

  /** By forward differences: off by half a step times the curvature, enough to climb by. */
  private static double[] slope(ToDoubleFunction<double[]> f, double[] at, double value) {
    double[] slope = new double[at.length];
    for (int i = 0; i < at.length; i++) {
      double[] beside = at.clone();
      beside[i] += STEP;
      double above = f.applyAsDouble(beside);
      slope[i] = Double.isFinite(above) ? (above - value) / STEP : 0;
    }
    return slope;
  }

  private static void update(double[][] inverse, double[] s, double[] y) {
    double sy = dot(s, y);
    if (!(sy > 1e-12)) {
      return;
    }
    double[] hy = times(inverse, y);
    double factor = (1 + dot(y, hy) / sy) / sy;
    for (int i = 0; i < s.length; i++) {
      for (int j = 0; j < s.length; j++) {
        inverse[i][j] += factor * s[i] * s[j] - (hy[i] * s[j] + s[i] * hy[j]) / sy;
      }
    }
  }

  private static double[] times(double[][] matrix, double[] x) {
    double[] out = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      out[i] = dot(matrix[i], x);
    }
    return out;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private static double[] plus(double[] x, double[] step, double part) {
    double[] out = x.clone();
    for (int i = 0; i < x.length; i++) {
      out[i] += part * step[i];
    }
    return out;
  }
}
