package sparewell.numerics;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Gauss-Jacobi nodes for a Beta(a, b) variable: E f(X) is about the weighted sum of f over the
 * nodes, exactly so for polynomials up to degree 2n-1.
 *
 * @see "Golub &amp; Welsch, Calculation of Gauss quadrature rules, Math. Comp. 23 (1969)"
 */
public final class GaussJacobi {
  private GaussJacobi() {}

  /**
   * A node.
   *
   * @param x its place in (0, 1)
   * @param weight its weight; the weights sum to 1
   */
  public record Node(double x, double weight) {}

  /**
   * The n nodes, from the left.
   *
   * @param n from 2 to 60
   * @param a &gt; 0
   * @param b &gt; 0
   */
  public static List<Node> nodes(int n, double a, double b) {
    if (n < 2 || n > 60 || !(a > 0) || !(b > 0)) {
      throw new IllegalArgumentException("nodes " + n + ", a " + a + ", b " + b);
    }
    Array2DRowRealMatrix jacobi = new Array2DRowRealMatrix(n, n);
    double s = a + b - 2;
    for (int i = 0; i < n; i++) {
      double middle = i == 0 ? (a - b) / (s + 2) : (a - b) * s / ((2 * i + s) * (2 * i + s + 2));
      jacobi.setEntry(i, i, (1 + middle) / 2);
      if (i > 0) {
        double square =
            i == 1
                ? a * b / ((s + 2) * (s + 2) * (s + 3))
                : i
                    * (i + a - 1)
                    * (i + b - 1)
                    * (i + s)
                    / ((2 * i + s) * (2 * i + s) * (2 * i + s + 1) * (2 * i + s - 1));
        jacobi.setEntry(i, i - 1, Math.sqrt(square));
        jacobi.setEntry(i - 1, i, Math.sqrt(square));
      }
    }
    EigenDecomposition eigen = new EigenDecomposition(jacobi);
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double first = eigen.getEigenvector(i).getEntry(0);
      double norm = eigen.getEigenvector(i).getNorm();
      nodes.add(new Node(eigen.getRealEigenvalue(i), first * first / (norm * norm)));
    }
    nodes.sort(java.util.Comparator.comparingDouble(Node::x));
    return List.copyOf(nodes);
  }
}
