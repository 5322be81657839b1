package sparewell.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class GaussHermiteTest {
  @Test
  void nodesIntegrateMoments() {
    double[] moments = {1, 0, 1, 0, 3, 0, 15, 0, 105}; // of the standard normal
    List<GaussHermite.Node> nodes = GaussHermite.nodes(9);
    for (int k = 0; k < moments.length; k++) {
      double sum = 0;
      for (GaussHermite.Node node : nodes) {
        sum += node.weight() * Math.pow(node.z(), k);
      }
      assertEquals(moments[k], sum, 1e-10);
    }
  }
}
