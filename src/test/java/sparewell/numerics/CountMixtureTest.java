package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.reference.Reference;

class CountMixtureTest {
  private static CountDistribution one(double mean, double size) {
    CountMixture mixture = new CountMixture(1);
    mixture.add(1, new double[] {mean}, new double[] {size});
    return mixture.distribution();
  }

  @Test
  void onePartAgreesWithR() {
    for (Reference.Row row : Reference.read("negbin-pmf.csv")) {
      CountDistribution ours = one(row.number("mean"), row.number("size"));
      // The distribution is cut where less than 1e-10 is left.
      assertEquals(row.number("pmf"), ours.probabilityOf(row.whole("k")), 1e-10);
      assertEquals(row.number("cdf"), ours.atMost(row.whole("k")), 1e-10);
    }
  }

  @Test
  void sumsOfEqualSharesAddTheirSizes() {
    // Negative binomials with one success chance add up to one with the sum of the sizes.
    CountMixture mixture = new CountMixture(2);
    mixture.add(1, new double[] {2, 3}, new double[] {1, 1.5});
    CountDistribution sum = mixture.distribution();
    for (int n = 0; n < 40; n++) {
      assertEquals(NegativeBinomial.pmf(n, 5, 2.5), sum.probabilityOf(n), 1e-13);
    }
  }

  @Test
  void sumsOfUnequalSharesAreConvolutions() {
    CountMixture mixture = new CountMixture(2);
    mixture.add(1, new double[] {0.4, 7}, new double[] {0.3, 12});
    CountDistribution sum = mixture.distribution();
    for (int n = 0; n < 60; n++) {
      double direct = 0;
      for (int j = 0; j <= n; j++) {
        direct += NegativeBinomial.pmf(j, 0.4, 0.3) * NegativeBinomial.pmf(n - j, 7, 12);
      }
      assertEquals(direct, sum.probabilityOf(n), n < sum.cut() ? 1e-13 : 1e-10);
    }
    assertEquals(7.4, sum.mean(), 1e-12);
  }

  @Test
  void hugeMeansDoNotUnderflow() {
    CountDistribution far = one(5_000, 4_000);
    double sd = Math.sqrt(5_000 + 5_000.0 * 5_000 / 4_000);
    assertEquals(NegativeBinomial.pmf(5_000, 5_000, 4_000), far.probabilityOf(5_000), 1e-9);
    assertEquals(0.5, far.atMost(5_000), 0.01);
    assertTrue(Math.abs(far.quantile(0.95) - (5_000 + 1.645 * sd)) < 0.1 * sd);
  }

  @Test
  void mixesItsParts() {
    CountMixture mixture = new CountMixture(1);
    mixture.add(3, new double[] {0.5}, new double[] {2});
    mixture.add(1, new double[] {9}, new double[] {0.7});
    CountDistribution mixed = mixture.distribution();
    for (int n = 0; n < 50; n++) {
      double direct =
          0.75 * NegativeBinomial.pmf(n, 0.5, 2) + 0.25 * NegativeBinomial.pmf(n, 9, 0.7);
      assertEquals(direct, mixed.probabilityOf(n), 1e-12);
    }
    assertEquals(0.75 * 0.5 + 0.25 * 9, mixed.mean(), 1e-12);
  }

  @Test
  void thinningOfPoissonByAKnownShareIsPoisson() {
    // A Beta with huge parameters is a known share of 0.3; Poisson(4) thinned is Poisson(1.2).
    // R 4.2.2: dpois(0:2, 1.2) = 0.3011942 0.3614331 0.2168598
    CountDistribution thin = BetaBinomial.thin(one(4, 1e9), 3e8, 7e8);
    assertEquals(0.3011942, thin.probabilityOf(0), 1e-7);
    assertEquals(0.3614331, thin.probabilityOf(1), 1e-7);
    assertEquals(0.2168598, thin.probabilityOf(2), 1e-7);
  }

  @Test
  void betaBinomialWithEvenWeightsIsUniform() {
    // Beta(1, 1) shares make every count equally likely (Johnson, Kemp, Kotz, from memory).
    for (double p : BetaBinomial.pmf(9, 1, 1)) {
      assertEquals(0.1, p, 1e-14);
    }
  }

  @Test
  void limitsOfSharedCountsAgreeWithCounting() {
    // Dirichlet(1, 1, 1): all splits of n among three are equally likely, (n+1)(n+2)/2 of them.
    double[] within = BetaBinomial.withinLimits(List.of(1.0, 1.0), List.of(1, 2), 1.0, 6);
    for (int n = 0; n <= 6; n++) {
      int good = 0;
      for (int i = 0; i <= Math.min(1, n); i++) {
        for (int j = 0; j <= Math.min(2, n - i); j++) {
          good++;
        }
      }
      assertEquals(good / ((n + 1) * (n + 2) / 2.0), within[n], 1e-13);
    }
  }

  @Test
  void hermiteNodesIntegrateMoments() {
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

  @Test
  void jacobiNodesIntegrateMoments() {
    for (double[] shape : new double[][] {{0.3, 4}, {1, 1}, {7, 0.5}}) {
      // E X^k of a Beta variable is the product of (a + j) / (a + b + j), j below k.
      double moment = 1;
      for (int k = 0; k < 14; k++) {
        double sum = 0;
        for (GaussJacobi.Node node : GaussJacobi.nodes(7, shape[0], shape[1])) {
          sum += node.weight() * Math.pow(node.x(), k);
        }
        assertEquals(moment, sum, 1e-12);
        moment *= (shape[0] + k) / (shape[0] + shape[1] + k);
      }
    }
  }

  @Test
  void climbsToTheTopOfAKnownHill() {
    QuasiNewton top =
        QuasiNewton.maximise(
            x -> -Math.pow(x[0] - 1, 2) - 10 * Math.pow(x[1] - x[0] * x[0], 2),
            new double[] {-0.5, 0.8},
            1e-12,
            200);
    assertTrue(top.converged());
    assertEquals(1, top.at()[0], 1e-4);
    assertEquals(1, top.at()[1], 1e-4);
  }
}
