package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Credible intervals of distributions whose quantiles are known. */
class EstimateTest {
  /** Normal around 0.03 with standard deviation 0.5: 5 and 95 % points 1.644854 of these away. */
  @Test
  void pointsOfAGridGiveTheQuantilesOfTheirDensity() {
    double[] weights = IntStream.range(-60, 61).mapToDouble(i -> density(0.05 * i)).toArray();
    Estimate estimate = Estimate.ofGrid(7, weights, -60, 0.05, 1);
    assertEquals(7, estimate.mean());
    assertEquals(0.03 - 1.644854 * 0.5, Math.log(estimate.low90()), 5e-4);
    assertEquals(0.03 + 1.644854 * 0.5, Math.log(estimate.high90()), 5e-4);
  }

  private static double density(double x) {
    return Math.exp(-Math.pow((x - 0.03) / 0.5, 2) / 2);
  }

  /** A density exp(2 x) up to half a step beyond the point: x = its end + ln(part) / 2. */
  @Test
  void theFirstPointStandsForAllToItsLeft() {
    Estimate estimate = Estimate.ofGrid(1, new double[] {0.4}, 5, 0.2, 2);
    assertEquals(1.1 + Math.log(0.05) / 2, Math.log(estimate.low90()), 1e-12);
    assertEquals(1.1 + Math.log(0.95) / 2, Math.log(estimate.high90()), 1e-12);
    Estimate longer = Estimate.ofGrid(1, new double[] {0.5, 0.5}, 5, 0.2, 2);
    assertEquals(1.1 + Math.log(0.1) / 2, Math.log(longer.low90()), 1e-12);
  }

  /** Middles of the draws' weights at 1, 47 and 96 %. */
  @Test
  void betweenDrawsTheDistributionIsEven() {
    double[] values = {2, 0, 1};
    Estimate estimate = Estimate.ofDraws(values, new double[] {0.08, 0.02, 0.9});
    assertEquals(1.06, estimate.mean(), 1e-12);
    assertEquals(0.04 / 0.46, estimate.low90(), 1e-12);
    assertEquals(1 + 0.48 / 0.49, estimate.high90(), 1e-12);
    Estimate ends = Estimate.ofDraws(values, new double[] {0.4, 0.2, 0.4});
    assertEquals(0, ends.low90());
    assertEquals(2, ends.high90());
  }
}
