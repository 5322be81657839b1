package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Points at which hyperparameters are tried, spread like a Student t around the peak of their
 * posterior; importance weights then correct the shape. A Sobol sequence stands in for random
 * numbers, so that equal input gives equal output.
 *
 * @see "Evans &amp; Swartz, Approximating Integrals via Monte Carlo and Deterministic Methods
 *     (2000), sec. 6.3 (from memory)"
 */
final class HyperSampler {
  private static final double DEGREES = 5;
  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final ChiSquaredDistribution CHI_SQUARE = new ChiSquaredDistribution(DEGREES);

  private HyperSampler() {}

  /**
   * A point to try.
   *
   * @param z place, in units of prior standard deviations
   * @param logDensity ln of the density it was drawn from, up to a constant
   * @param newCover standard normal value for a cover never logged
   */
  record Point(double[] z, double logDensity, double newCover) {}

  /**
   * Points around a peak.
   *
   * @param axes as of {@link #axes}
   * @param count how many, even
   */
  static List<Point> points(double[][] axes, double[] peak, int count) {
    int n = peak.length;
    SobolSequenceGenerator sobol = new SobolSequenceGenerator(n + 2);
    List<Point> points = new ArrayList<>();
    for (int d = 0; d < count / 2; d++) {
      double[] u = sobol.nextVector();
      for (int i = 0; i < u.length; i++) {
        // Off 0, where the normal quantile is infinite; 1 is not reached.
        u[i] += 0.5 / count;
      }
      double stretch = Math.sqrt(DEGREES / CHI_SQUARE.inverseCumulativeProbability(u[n]));
      double[] t = new double[n];
      double square = 0;
      for (int i = 0; i < n; i++) {
        t[i] = stretch * NORMAL.inverseCumulativeProbability(u[i]);
        square += t[i] * t[i];
      }
      double logDensity = -(DEGREES + n) / 2 * Math.log1p(square / DEGREES);
      double newCover = NORMAL.inverseCumulativeProbability(u[n + 1]);
      for (int sign = 1; sign >= -1; sign -= 2) {
        double[] z = peak.clone();
        for (int i = 0; i < n; i++) {
          for (int j = 0; j < n; j++) {
            z[i] += sign * axes[i][j] * t[j];
          }
        }
        points.add(new Point(z, logDensity, sign * newCover));
      }
    }
    return points;
  }

  /**
   * Spread of the posterior around its peak: the symmetric root of its covariance, which unlike
   * single axes is well determined where some are of equal length.
   */
  static double[][] axes(double[][] precision) {
    EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(precision));
    double[] length = eigen.getRealEigenvalues();
    for (int j = 0; j < length.length; j++) {
      // Never wider than a little over the prior.
      length[j] = 1 / Math.sqrt(Math.max(length[j], 0.6));
    }
    RealMatrix turned = eigen.getV().multiply(MatrixUtils.createRealDiagonalMatrix(length));
    return turned.multiply(eigen.getVT()).getData();
  }

  static double[][] diagonal(int n, double value) {
    return MatrixUtils.createRealIdentityMatrix(n).scalarMultiply(value).getData();
  }
}
