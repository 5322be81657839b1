package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Small distributions, worked by hand; shares of a count against scipy 1.10.1. */
class CountDistributionTest {
  /** 0, 1, 3 with chances 0.5, 0.25, 0.125; the rest lies beyond 3, so that the mean is larger. */
  private static final CountDistribution CUT =
      CountDistribution.of(new double[] {0.5, 0.25, 0, 0.125}, 1.5);

  @ParameterizedTest
  @CsvSource({
    // n, P(N = n), P(N <= n), P(N > n)
    "-1, 0, 0, 1",
    "0, 0.5, 0.5, 0.5",
    "1, 0.25, 0.75, 0.25",
    "2, 0, 0.75, 0.25",
    "3, 0.125, 0.875, 0.125",
    "4, 0, 1, 0"
  })
  void chances(int n, double exactly, double atMost, double above) {
    assertEquals(exactly, CUT.probabilityOf(n));
    assertEquals(atMost, CUT.atMost(n));
    assertEquals(above, CUT.above(n));
  }

  // 1.5, less P(N > 0) = 0.5, less P(N > 1) = 0.25, less P(N > 2) = 0.25, less P(N > 3) = 0.125;
  // what is not held counts as none beyond.
  @ParameterizedTest
  @CsvSource({"-2, 1.5", "0, 1.5", "1, 1", "2, 0.75", "3, 0.5", "4, 0.375", "9, 0.375"})
  void expectedShortageFallsByTheChanceToNeedThePiece(int stock, double shortage) {
    assertEquals(shortage, CUT.expectedShortage(stock), 1e-15);
  }

  @Test
  void shortageIsNeverBelowZero() {
    CountDistribution rounded = CountDistribution.of(new double[] {0.5, 0.5}, 0.5 - 1e-12);
    assertEquals(0, rounded.expectedShortage(1));
    assertEquals(0, CountDistribution.none().expectedShortage(0));
    assertEquals(1, CountDistribution.none().probabilityOf(0));
  }

  @ParameterizedTest
  @CsvSource({
    "0.001, 0",
    "0.5, 0",
    "0.500001, 1",
    "0.75, 1",
    "0.750001, 3",
    "0.875, 3",
    "0.876, 4",
    "0.999, 4"
  })
  void quantileIsTheLeastCountThatReachesTheChance(double chance, int count) {
    assertEquals(count, CUT.quantile(chance));
  }

  @Test
  void aSumThatFallsShortByRoundingAloneReachesTheChance() {
    // 0.7 + 0.1 is 0.7999999999999999 in binary
    assertEquals(1, CountDistribution.of(new double[] {0.7, 0.1, 0.2}, 0.5).quantile(0.8));
  }

  @Test
  void ofCountsThatReachTheChanceEquallyTheFirstIsTaken() {
    double asked = 0.5 - 1e-12; // what a chance of 0.5 is compared with
    assertEquals(
        0, CountDistribution.of(new double[] {asked, 0, 0, 0.5}, 1.5).quantile(0.5), "a plateau");
    assertEquals(0, CountDistribution.of(new double[] {asked, 0.5}, 0.5).quantile(0.5));
    assertEquals(
        2, CountDistribution.of(new double[] {0, 0.25, 0.25, 0, 0, 0.5}, 3.25).quantile(0.5));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1, -0.5, 1.5, Double.NaN})
  void refusesAChanceThatIsNone(double chance) {
    assertThrows(IllegalArgumentException.class, () -> CUT.quantile(chance));
  }

  @Test
  void refusesWhatIsNoDistribution() {
    for (double[] mass :
        new double[][] {{}, {0}, {0, 0}, {0.5, -0.1}, {0.6, 0.5}, {Double.NaN, 0.5}}) {
      assertThrows(IllegalArgumentException.class, () -> CountDistribution.of(mass, 1));
    }
    assertThrows(
        IllegalArgumentException.class, () -> CountDistribution.of(new double[] {1}, -1e-9));
    assertThrows(
        IllegalArgumentException.class, () -> CountDistribution.of(new double[] {1}, Double.NaN));
  }

  private static CountDistribution poisson(double mean) {
    CountMixture mixture = new CountMixture();
    mixture.add(1, mean, 1e12);
    return mixture.distribution();
  }

  /** Chances of 0, ..., n for an item where exactly n pieces are lost. */
  private static double[] pmf(int n, double a, double b) {
    double[] mass = new double[n + 1];
    mass[n] = 1;
    CountDistribution thin = CountDistribution.of(mass, n).thinned(a, b);
    return IntStream.rangeClosed(0, n).mapToDouble(thin::probabilityOf).toArray();
  }

  /** scipy 1.10.1: betabinom.pmf(range(6), 5, 0.7, 2.3). */
  @Test
  void sharesOfACountAgreeWithScipy() {
    assertArrayEquals(
        new double[] {
          0.43244025, 0.240244583333333, 0.154119166666667, 0.0967725, 0.05425125, 0.02217225
        },
        pmf(5, 0.7, 2.3),
        1e-14);
    assertArrayEquals(new double[] {1}, pmf(0, 0.7, 2.3));
  }

  @Test
  void withEvenWeightsAShareIsUniform() {
    // Beta(1, 1) shares make every count equally likely (Johnson, Kemp, Kotz, from memory).
    for (double p : pmf(9, 1, 1)) {
      assertEquals(0.1, p, 1e-14);
    }
  }

  @Test
  void aSoleItemGetsAll() {
    assertArrayEquals(new double[] {0, 0, 0, 1}, pmf(3, 0.4, 0));
    CountDistribution whole = poisson(2.5);
    CountDistribution thin = whole.thinned(0.4, 0);
    for (int n = 0; n < 12; n++) {
      assertEquals(whole.probabilityOf(n), thin.probabilityOf(n), 1e-15);
    }
    assertEquals(2.5, thin.mean(), 1e-12);
  }

  @Test
  void thinningOfPoissonByAKnownShareIsPoisson() {
    // A Beta with huge parameters is a known share of 0.3; Poisson(4) thinned is Poisson(1.2).
    // R 4.2.2: dpois(0:2, 1.2) = 0.3011942 0.3614331 0.2168598
    CountDistribution thin = poisson(4).thinned(3e8, 7e8);
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
    CountDistribution thin = poisson(2.5).thinned(0.7, 2.3);
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
    double[] mass = new double[CountDistribution.MOST_THINNED];
    mass[mass.length - 1] = 1;
    int n = mass.length - 1;
    for (double share : new double[] {0.05, 0.37, 0.5, 0.95}) {
      CountDistribution item =
          CountDistribution.of(mass, n).thinned(1e6 * share, 1e6 * (1 - share));
      assertEquals(1, item.atMost(n), 1e-6);
    }
  }
}
