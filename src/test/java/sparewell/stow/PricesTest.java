package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Steps of the prices, by hand. */
class PricesTest {
  private static final double CLOSE = 1e-12;

  private static void is(Prices prices, double... expected) {
    assertArrayEquals(expected, prices.copy(), CLOSE);
  }

  @Test
  void climbWhereTheSlackPoints() {
    Prices prices = new Prices(new double[] {10, 20}, 2);
    // Direction 1, -1, 4/2 and 3: its square is 15, so a rise of 30 makes the step 2.
    assertTrue(prices.climb(new double[] {1, -1}, 4, 3, 30));
    is(prices, 12, 18, 2, 6);
    // 0.6 of that direction goes on: 0.6 + 0.4, -0.6, 1.2 - 1.2, 1.8 - 0.8; squares 1 + 0.36 + 1.
    assertTrue(prices.climb(new double[] {0.4, 0}, -2.4, -0.8, 2.36));
    is(prices, 13, 17.4, 2, 7);
    prices.forgetDirection();
    assertTrue(prices.climb(new double[] {0, 0}, 0, 1, 2));
    is(prices, 13, 17.4, 2, 9);
  }

  @Test
  void aMoveNeverCostsLessThanNothing() {
    Prices prices = new Prices(new double[] {10}, 2);
    prices.move = 1;
    assertTrue(prices.climb(new double[] {0}, 0, -1, 5));
    is(prices, 10, 0, 0);
  }

  @Test
  void onlyOneSideLimitHasAPriceAtATime() {
    Prices prices = new Prices(new double[] {10}, 2);
    prices.side = 1;
    assertTrue(prices.climb(new double[] {0}, -2, 0, 4));
    is(prices, 10, 0, 0);
    assertTrue(prices.climb(new double[] {0}, -2, 0, 4));
    assertTrue(prices.side < 0, "from nothing it may go either way");
  }

  @Test
  void withoutSlackThereIsNowhereToGo() {
    Prices prices = new Prices(new double[] {10}, 2);
    assertFalse(prices.climb(new double[] {0}, 0, 0, 5));
    is(prices, 10, 0, 0);
  }

  @Test
  void keptPricesComeBack() {
    Prices prices = new Prices(new double[] {10}, 2);
    prices.climb(new double[] {1}, 2, 1, 3);
    double[] there = prices.copy();
    prices.keep();
    prices.climb(new double[] {1}, 2, 1, 3);
    prices.restore();
    assertArrayEquals(there, prices.copy(), 0);
    prices.take(new double[] {7, -1, 3});
    assertEquals(7, prices.box[0]);
    assertEquals(-1, prices.side);
    assertEquals(3, prices.move);
    prices.restore();
    is(prices, there);
  }

  @Test
  void theStartIsTheBestUntilAnotherIsKept() {
    Prices prices = new Prices(new double[] {10}, 2);
    prices.climb(new double[] {1}, 2, 1, 3);
    prices.restore();
    is(prices, 10, 0, 0);
  }
}
