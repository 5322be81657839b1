package sparewell.bench;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Gauss-Hermite nodes for a standard normal variable: E f(Z) is about the weighted sum of f over
 * the nodes, exactly so for polynomials up to degree 2n-1.
 *
 * @see "Golub &amp; Welsch, Calculation of Gauss quadrature rules, Math. Comp. 23 (1969)"
 */
final class GaussHermite {
  private GaussHermite() {}

  /**
   * A node.
   *
   * @param z its place, in standard deviations
   * @param weight its weight; the weights sum to 1
   */
  record Node(double z, double weight) {}

  /**
   * The n nodes, from the left.
   *
   * @param n from 1 to 60
   */
  static List<Node> nodes(int n) {
    Array2DRowRealMatrix jacobi = new Array2DRowRealMatrix(n, n);
    for (int i = 1; i < n; i++) {
      jacobi.setEntry(i, i - 1, Math.sqrt(i));
      jacobi.setEntry(i - 1, i, Math.sqrt(i));
    }
    EigenDecomposition eigen = new EigenDecomposition(jacobi);
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double first = eigen.getEigenvector(i).getEntry(0);
      double norm = eigen.getEigenvector(i).getNorm();
      nodes.add(new Node(eigen.getRealEigenvalue(i), first * first / (norm * norm)));
    }
    nodes.sort(java.util.Comparator.comparingDouble(Node::z));
    return List.copyOf(nodes);
  }
}
