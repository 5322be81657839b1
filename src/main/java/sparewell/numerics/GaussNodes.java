package sparewell.numerics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Gauss nodes for a random variable: E f(X) is about the weighted sum of f over the nodes, exactly
 * so for polynomials up to degree 2n-1.
 *
 * @see "Golub &amp; Welsch, Calculation of Gauss quadrature rules, Math. Comp. 23 (1969)"
 */
public final class GaussNodes {
  private GaussNodes() {}

  /**
   * A node.
   *
   * @param x its place, in the units of the variable
   * @param weight its weight; the weights sum to 1
   */
  public record Node(double x, double weight) {}

  /**
   * The nodes of the variable whose orthonormal polynomials obey x p(i) = b(i) p(i-1) + a(i) p(i) +
   * b(i+1) p(i+1), from the left.
   *
   * @param middle a(0) to a(n-1)
   * @param beside b(0) to b(n-1); b(0) does not count
   */
  public static List<Node> of(double[] middle, double[] beside) {
    int n = middle.length;
    Array2DRowRealMatrix jacobi = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      jacobi.setEntry(i, i, middle[i]);
      if (i > 0) {
        jacobi.setEntry(i, i - 1, beside[i]);
        jacobi.setEntry(i - 1, i, beside[i]);
      }
    }
    EigenDecomposition eigen = new EigenDecomposition(jacobi);
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double first = eigen.getEigenvector(i).getEntry(0);
      double norm = eigen.getEigenvector(i).getNorm();
      nodes.add(new Node(eigen.getRealEigenvalue(i), first * first / (norm * norm)));
    }
    nodes.sort(Comparator.comparingDouble(Node::x));
    return List.copyOf(nodes);
  }

  /**
   * Gauss-Jacobi nodes: those of a Beta(a, b) variable.
   *
   * @param n from 2 to 60
   * @param a &gt; 0
   * @param b &gt; 0
   */
  public static List<Node> ofBeta(int n, double a, double b) {
    if (n < 2 || n > 60 || !(a > 0) || !(b > 0)) {
      throw new IllegalArgumentException("nodes " + n + ", a " + a + ", b " + b);
    }
    double[] middle = new double[n];
    double[] beside = new double[n];
    double s = a + b - 2;
    for (int i = 0; i < n; i++) {
      double centre = i == 0 ? (a - b) / (s + 2) : (a - b) * s / ((2 * i + s) * (2 * i + s + 2));
      middle[i] = (1 + centre) / 2;
      if (i > 0) {
        double square =
            i == 1
                ? a * b / ((s + 2) * (s + 2) * (s + 3))
                : i
                    * (i + a - 1)
                    * (i + b - 1)
                    * (i + s)
                    / ((2 * i + s) * (2 * i + s) * (2 * i + s + 1) * (2 * i + s - 1));
        beside[i] = Math.sqrt(square);
      }
    }
    return of(middle, beside);
  }
}
