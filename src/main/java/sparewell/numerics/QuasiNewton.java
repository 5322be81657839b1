package sparewell.numerics;

import java.util.function.ToDoubleFunction;

/**
 * Maximises a smooth function of a few variables by BFGS and a halving line search, with forward
 * differences on the way and central ones near the top. The variables should be scaled so that a
 * step of 1 is of the order of the function's width.
 *
 * @see "Nocedal &amp; Wright, Numerical Optimization, 2nd ed., ch. 6 (from memory)"
 */
public final class QuasiNewton {
  private static final double STEP = 2e-4;
  private static final double CENTRAL_STEP = 1e-3;

  /** Gain still promised from which on a fine climb takes central differences. */
  private static final double NEAR = 0.01;

  /** A climb that may end further from the top is not fine: forward differences lead there. */
  private static final double FINE = 1e-4;

  private final double[] at;
  private final double value;
  private final int iterations;
  private final boolean converged;

  private QuasiNewton(double[] at, double value, int iterations, boolean converged) {
    this.at = at;
    this.value = value;
    this.iterations = iterations;
    this.converged = converged;
  }

  /**
   * Climbs from a start.
   *
   * @param f function to maximise; may be minus infinity outside its domain, never NaN
   * @param start where it is finite
   * @param tolerance expected gain of the next step below which the climb ends
   * @param mostIterations end without convergence after so many
   */
  public static QuasiNewton maximise(
      ToDoubleFunction<double[]> f, double[] start, double tolerance, int mostIterations) {
    return maximise(f, start, identity(start.length), tolerance, mostIterations);
  }

  /**
   * Climbs from a start where the curvature is known about.
   *
   * @param guess about minus the inverse of the second derivatives, positive definite
   */
  public static QuasiNewton maximise(
      ToDoubleFunction<double[]> f,
      double[] start,
      double[][] guess,
      double tolerance,
      int mostIterations) {
    int n = start.length;
    double[] x = start.clone();
    double value = f.applyAsDouble(x);
    double[][] inverse = new double[n][];
    for (int i = 0; i < n; i++) {
      inverse[i] = guess[i].clone();
    }
    double[] gradient = gradient(f, x, value);
    boolean central = false;
    for (int iteration = 1; iteration <= mostIterations; iteration++) {
      double[] step = times(inverse, gradient);
      double slope = dot(step, gradient);
      if (!(slope > 0)) {
        inverse = identity(n);
        step = gradient.clone();
        slope = dot(step, gradient);
      }
      if (!central && tolerance < FINE && slope / 2 < NEAR) {
        central = true;
        gradient = centralGradient(f, x);
        continue;
      }
      if (slope / 2 < tolerance) {
        return new QuasiNewton(x, value, iteration, Double.isFinite(value));
      }
      // Three widths at once is far enough, whatever the slope promises.
      double fraction = Math.min(1, 3 / Math.sqrt(dot(step, step)));
      double[] next = plus(x, step, fraction);
      double nextValue = f.applyAsDouble(next);
      while (!(nextValue >= value + 1e-4 * fraction * slope) && fraction > 1e-7) {
        fraction /= 2.5;
        next = plus(x, step, fraction);
        nextValue = f.applyAsDouble(next);
      }
      if (!(nextValue > value)) {
        return new QuasiNewton(x, value, iteration, slope / 2 < 100 * tolerance);
      }
      double[] nextGradient = central ? centralGradient(f, next) : gradient(f, next, nextValue);
      update(inverse, difference(next, x), difference(gradient, nextGradient));
      x = next;
      value = nextValue;
      gradient = nextGradient;
    }
    return new QuasiNewton(x, value, mostIterations, false);
  }

  /** Where the function is largest. */
  public double[] at() {
    return at.clone();
  }

  /** The largest value. */
  public double value() {
    return value;
  }

  /** Steps taken. */
  public int iterations() {
    return iterations;
  }

  /** Whether the climb ended because there was nothing left to gain. */
  public boolean converged() {
    return converged;
  }

  /**
   * Minus the second derivatives of f, by symmetric differences: right for a cubic, too.
   *
   * @param step width of the differences, &gt; 0
   */
  public static double[][] curvature(ToDoubleFunction<double[]> f, double[] at, double step) {
    int n = at.length;
    double centre = f.applyAsDouble(at);
    double[] sides = new double[n]; // sum of the values on both sides
    double[][] matrix = new double[n][n];
    for (int i = 0; i < n; i++) {
      sides[i] = sum(f, at, i, i, step);
      matrix[i][i] = (2 * centre - sides[i]) / (step * step);
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        double both = sum(f, at, i, j, step);
        matrix[i][j] = (sides[i] + sides[j] - 2 * centre - both) / (2 * step * step);
        matrix[j][i] = matrix[i][j];
      }
    }
    return matrix;
  }

  /** f a step forward along both variables (or the one), plus f a step back. */
  private static double sum(ToDoubleFunction<double[]> f, double[] at, int i, int j, double step) {
    double[] forward = at.clone();
    double[] back = at.clone();
    forward[i] = at[i] + step;
    forward[j] = at[j] + step;
    back[i] = at[i] - step;
    back[j] = at[j] - step;
    return f.applyAsDouble(forward) + f.applyAsDouble(back);
  }

  private static double[] centralGradient(ToDoubleFunction<double[]> f, double[] at) {
    double[] slope = new double[at.length];
    double[] x = at.clone();
    for (int i = 0; i < x.length; i++) {
      x[i] = at[i] + CENTRAL_STEP;
      double above = f.applyAsDouble(x);
      x[i] = at[i] - CENTRAL_STEP;
      double below = f.applyAsDouble(x);
      x[i] = at[i];
      boolean finite = Double.isFinite(above) && Double.isFinite(below);
      slope[i] = finite ? (above - below) / (2 * CENTRAL_STEP) : 0;
    }
    return slope;
  }

  /** By forward differences: off by half a step times the curvature, enough to climb by. */
  private static double[] gradient(ToDoubleFunction<double[]> f, double[] at, double value) {
    double[] slope = new double[at.length];
    double[] x = at.clone();
    for (int i = 0; i < x.length; i++) {
      x[i] = at[i] + STEP;
      double above = f.applyAsDouble(x);
      x[i] = at[i];
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

  private static double[][] identity(int n) {
    double[][] matrix = new double[n][n];
    for (int i = 0; i < n; i++) {
      matrix[i][i] = 0.5;
    }
    return matrix;
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

  private static double[] plus(double[] x, double[] step, double fraction) {
    double[] out = x.clone();
    for (int i = 0; i < x.length; i++) {
      out[i] += fraction * step[i];
    }
    return out;
  }

  private static double[] difference(double[] a, double[] b) {
    return plus(a, b, -1);
  }
}
