package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Shares of a count against scipy 1.10.1 and against counting. */
class BetaBinomialTest {
  private static CountDistribution poisson(double mean) {
    CountMixture mixture = new CountMixture();
    mixture.add(1, new double[] {mean}, new double[] {1e12});
    return mixture.distribution();
  }

  /** Chances of 0, ..., n for an item where exactly n pieces are lost. */
  private static double[] pmf(int n, double a, double b) {
    double[] mass = new double[n + 1];
    mass[n] = 1;
    return BetaBinomial.thin(CountDistribution.of(mass, n), a, b).masses();
  }

  /** scipy 1.10.1: betabinom.pmf(range(6), 5, 0.7, 2.3). */
  @Test
  void agreesWithScipy() {
    assertArrayEquals(
        new double[] {
          0.43244025, 0.240244583333333, 0.154119166666667, 0.0967725, 0.05425125, 0.02217225
        },
        pmf(5, 0.7, 2.3),
        1e-14);
    assertArrayEquals(new double[] {1}, pmf(0, 0.7, 2.3));
  }

  @Test
  void withEvenWeightsIsUniform() {
    // Beta(1, 1) shares make every count equally likely (Johnson, Kemp, Kotz, from memory).
    for (double p : pmf(9, 1, 1)) {
      assertEquals(0.1, p, 1e-14);
    }
  }

  @Test
  void aSoleItemGetsAll() {
    assertArrayEquals(new double[] {0, 0, 0, 1}, pmf(3, 0.4, 0));
    CountDistribution whole = poisson(2.5);
    CountDistribution thin = BetaBinomial.thin(whole, 0.4, 0);
    for (int n = 0; n < 12; n++) {
      assertEquals(whole.probabilityOf(n), thin.probabilityOf(n), 1e-15);
    }
    assertEquals(2.5, thin.mean(), 1e-12);
  }

  @Test
  void thinningOfPoissonByAKnownShareIsPoisson() {
    // A Beta with huge parameters is a known share of 0.3; Poisson(4) thinned is Poisson(1.2).
    // R 4.2.2: dpois(0:2, 1.2) = 0.3011942 0.3614331 0.2168598
    CountDistribution thin = BetaBinomial.thin(poisson(4), 3e8, 7e8);
    assertEquals(0.3011942, thin.probabilityOf(0), 1e-7);
    assertEquals(0.3614331, thin.probabilityOf(1), 1e-7);
    assertEquals(0.2168598, thin.probabilityOf(2), 1e-7);
  }

  /** scipy 1.10.1: sum over n of poisson.pmf(n, 2.5) * betabinom.pmf(x, n, 0.7, 2.3). */
  @Test
  void thinningByAnUnknownShareAgreesWithScipy() {
    double[] expected = {
      0.627025858646354,
      0.232768996441588,
      0.0914671138988069,
      0.0333007076346235,
      0.0109885752468402
    };
    CountDistribution thin = BetaBinomial.thin(poisson(2.5), 0.7, 2.3);
    for (int x = 0; x < expected.length; x++) {
      assertEquals(expected[x], thin.probabilityOf(x), 1e-10);
    }
    assertEquals(2.5 * 0.7 / 3, thin.mean(), 1e-12);
  }

  /** R 4.2.2: by lchoose and lbeta (500 and 550 of 1000); pbinom(480, 1000, 0.5). */
  @Test
  void largeCountsAndSharesNeitherUnderflowNorOverflow() {
    double[] thin = pmf(1000, 1e6, 1e6);
    assertEquals(0.0252187142845, thin[500], 1e-11);
    assertEquals(0.000169778616874, thin[550], 1e-13);
  }

  /** All pieces of a count at the limit are of the item or not: its chances are still whole. */
  @Test
  void noChanceGetsLostAtTheLargestCountThinned() {
    double[] mass = new double[BetaBinomial.MOST_THINNED];
    mass[mass.length - 1] = 1;
    int n = mass.length - 1;
    for (double share : new double[] {0.05, 0.37, 0.5, 0.95}) {
      CountDistribution item =
          BetaBinomial.thin(CountDistribution.of(mass, n), 1e6 * share, 1e6 * (1 - share));
      assertEquals(1, item.atMost(n), 1e-6);
    }
  }
}
