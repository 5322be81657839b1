package sparewell.numerics;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

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
    RealVector x = new ArrayRealVector(start);
    double value = f.applyAsDouble(start);
    RealVector slope = slope(f, x, value);
    RealMatrix inverse = new Array2DRowRealMatrix(guess);
    for (int step = 0; step < most; step++) {
      RealVector way = inverse.operate(slope);
      double gain = way.dotProduct(slope);
      if (gain / 2 < tolerance) {
        return new Peak(x.toArray(), value, Double.isFinite(value));
      }
      double part = Math.min(1, LONGEST / way.getNorm());
      RealVector next = x.combine(1, part, way);
      double there = f.applyAsDouble(next.toArray());
      while (!(there >= value + 1e-4 * part * gain) && part > 1e-6) {
        part /= 2.5;
        next = x.combine(1, part, way);
        there = f.applyAsDouble(next.toArray());
      }
      if (!(there > value)) {
        return new Peak(x.toArray(), value, gain / 2 < 100 * tolerance);
      }
      RealVector nextSlope = slope(f, next, there);
      inverse = updated(inverse, next.subtract(x), slope.subtract(nextSlope));
      x = next;
      value = there;
      slope = nextSlope;
    }
    return new Peak(x.toArray(), value, false);
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
  private static RealVector slope(ToDoubleFunction<double[]> f, RealVector at, double value) {
    RealVector slope = new ArrayRealVector(at.getDimension());
    for (int i = 0; i < at.getDimension(); i++) {
      double[] beside = at.toArray();
      beside[i] += STEP;
      double above = f.applyAsDouble(beside);
      slope.setEntry(i, Double.isFinite(above) ? (above - value) / STEP : 0);
    }
    return slope;
  }

  /** The inverse after a step s on which the slope fell by y. */
  private static RealMatrix updated(RealMatrix inverse, RealVector s, RealVector y) {
    double sy = s.dotProduct(y);
    if (!(sy > 1e-12)) {
      return inverse;
    }
    RealVector hy = inverse.operate(y);
    RealMatrix both = hy.outerProduct(s);
    double factor = (1 + y.dotProduct(hy) / sy) / sy;
    return inverse
        .add(s.outerProduct(s).scalarMultiply(factor))
        .subtract(both.add(both.transpose()).scalarMultiply(1 / sy));
  }
}
