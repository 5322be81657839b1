package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Small distributions, worked by hand. */
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

  /** Bundles are single pieces spread evenly: every answer is that of the pieces one by one. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 16})
  void bundlesAnswerAsTheirPiecesDo(int bundle) {
    double[] chances = {0.5, 0.3, 0, 0.15};
    double[] pieces = new double[chances.length * bundle];
    for (int n = 0; n < pieces.length; n++) {
      pieces[n] = chances[n / bundle] / bundle;
    }
    CountDistribution bundled = CountDistribution.of(chances, 3.5 * bundle, bundle);
    CountDistribution single = CountDistribution.of(pieces, 3.5 * bundle);
    assertEquals(single.cut(), bundled.cut());
    for (int n = -2; n < pieces.length + 3; n++) {
      assertEquals(single.probabilityOf(n), bundled.probabilityOf(n), 1e-15, "exactly " + n);
      assertEquals(single.atMost(n), bundled.atMost(n), 1e-15, "at most " + n);
      assertEquals(single.expectedShortage(n), bundled.expectedShortage(n), 1e-13, "stock " + n);
    }
    for (double chance = 0.0013; chance < 1; chance += 0.007) {
      assertEquals(single.quantile(chance), bundled.quantile(chance), "chance " + chance);
    }
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
    assertThrows(
        IllegalArgumentException.class, () -> CountDistribution.of(new double[] {1}, 1, 0));
  }
}
