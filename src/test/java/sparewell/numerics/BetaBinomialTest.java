package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shares of a count against scipy 1.10.1 and against counting. */
class BetaBinomialTest {
  private static CountDistribution poisson(double mean) {
    CountMixture mixture = new CountMixture(1);
    mixture.add(1, new double[] {mean}, new double[] {1e12});
    return mixture.distribution();
  }

  private static CountDistribution exactly(int n) {
    double[] mass = new double[n + 1];
    mass[n] = 1;
    return CountDistribution.of(mass, n);
  }

  /** scipy 1.10.1: betabinom.pmf(range(6), 5, 0.7, 2.3). */
  @Test
  void agreesWithScipy() {
    assertArrayEquals(
        new double[] {
          0.43244025, 0.240244583333333, 0.154119166666667, 0.0967725, 0.05425125, 0.02217225
        },
        BetaBinomial.pmf(5, 0.7, 2.3),
        1e-14);
    assertArrayEquals(new double[] {1}, BetaBinomial.pmf(0, 0.7, 2.3));
  }

  @Test
  void withEvenWeightsIsUniform() {
    // Beta(1, 1) shares make every count equally likely (Johnson, Kemp, Kotz, from memory).
    for (double p : BetaBinomial.pmf(9, 1, 1)) {
      assertEquals(0.1, p, 1e-14);
    }
  }

  /** mpmath 1.3.0, 50 digits, by loggamma; both ends are too small for a double. */
  @ParameterizedTest
  @CsvSource({
    "1e6, 1e6, 2500, 0.0112691498476885",
    "1e6, 1e6, 2400, 0.000208415236802713",
    "2e6, 6e6, 1250, 0.0130243898527267",
    "2e6, 6e6, 1300, 0.00343150784492373"
  })
  void largeCountsNeitherUnderflowNorOverflow(double a, double b, int count, double expected) {
    assertEquals(expected, BetaBinomial.pmf(5000, a, b)[count], 1e-12 * expected);
  }

  @Test
  void aSoleItemGetsAll() {
    assertArrayEquals(new double[] {0, 0, 0, 1}, BetaBinomial.pmf(3, 0.4, 0));
    CountDistribution whole = poisson(2.5);
    CountDistribution thin = BetaBinomial.thin(whole, 0.4, 0);
    for (int n = 0; n < 12; n++) {
      assertEquals(whole.probabilityOf(n), thin.probabilityOf(n), 1e-15);
    }
    assertEquals(2.5, thin.mean(), 1e-12);
  }

  @Test
  void refusesWhatIsNoShare() {
    assertThrows(IllegalArgumentException.class, () -> BetaBinomial.pmf(-1, 1, 1));
    assertThrows(IllegalArgumentException.class, () -> BetaBinomial.pmf(1, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> BetaBinomial.pmf(1, 1, -0.1));
    assertThrows(IllegalArgumentException.class, () -> BetaBinomial.pmf(1, Double.NaN, 1));
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

  /** mpmath 1.3.0, 50 digits, by loggamma: 1500 and 1600 of 3000 where both shares are even. */
  @Test
  void thinningOfLargeCountsKeepsWhatLiesFarOut() {
    CountDistribution thin = BetaBinomial.thin(exactly(3000), 1e6, 1e6);
    assertEquals(0.014555186213987, thin.probabilityOf(1500), 1e-14);
    assertEquals(1.86584778301071e-05, thin.probabilityOf(1600), 1e-16);
    assertEquals(1500, thin.mean(), 1e-9);
    // Two whole counts of one half each add up.
    double[] halves = new double[2001];
    halves[2000] = 0.5;
    halves[0] = 0.5;
    CountDistribution mixed = BetaBinomial.thin(CountDistribution.of(halves, 1000), 1, 1);
    assertEquals(0.5 + 0.5 / 2001, mixed.probabilityOf(0), 1e-12);
    assertEquals(0.5 / 2001, mixed.probabilityOf(2000), 1e-12);
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

  /** scipy 1.10.1: betabinom.cdf(2, n, 0.7, 2.3) for n = 0, ..., 7. */
  @Test
  void oneLimitIsABetaBinomialChance() {
    assertArrayEquals(
        new double[] {1, 1, 1, 0.94645, 0.8848675, 0.826804, 0.774788781250001, 0.728842004687501},
        BetaBinomial.withinLimits(List.of(0.7), List.of(2), 2.3, 7),
        1e-13);
  }

  /** scipy 1.10.1: sum of betabinom.pmf(x, n, 0.7, 2.3) over x at most 2 with n - x at most 4. */
  @Test
  void withAllItemsLimitedMoreThanAllLimitsCannotBeShared() {
    assertArrayEquals(
        new double[] {1, 1, 1, 0.94645, 0.8848675, 0.39436375, 0.153155921875, 0},
        BetaBinomial.withinLimits(List.of(0.7, 2.3), List.of(2, 4), 0, 7),
        1e-13);
  }
}
