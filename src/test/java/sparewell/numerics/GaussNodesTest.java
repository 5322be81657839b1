package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class GaussNodesTest {
  @Test
  void nodesOfTheStandardNormalIntegrateItsMoments() {
    double[] moments = {1, 0, 1, 0, 3, 0, 15, 0, 105};
    double[] beside = new double[9];
    for (int i = 1; i < beside.length; i++) {
      beside[i] = Math.sqrt(i);
    }
    List<GaussNodes.Node> nodes = GaussNodes.of(new double[9], beside);
    for (int k = 0; k < moments.length; k++) {
      double sum = 0;
      for (GaussNodes.Node node : nodes) {
        sum += node.weight() * Math.pow(node.x(), k);
      }
      assertEquals(moments[k], sum, 1e-10);
    }
  }

  @Test
  void jacobiNodesIntegrateMoments() {
    for (double[] shape : new double[][] {{0.3, 4}, {1, 1}, {7, 0.5}}) {
      // E X^k of a Beta variable is the product of (a + j) / (a + b + j), j below k.
      double moment = 1;
      for (int k = 0; k < 14; k++) {
        double sum = 0;
        for (GaussNodes.Node node : GaussNodes.ofBeta(7, shape[0], shape[1])) {
          sum += node.weight() * Math.pow(node.x(), k);
        }
        assertEquals(moment, sum, 1e-12);
        moment *= (shape[0] + k) / (shape[0] + shape[1] + k);
      }
    }
  }
}
