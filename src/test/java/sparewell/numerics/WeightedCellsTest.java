package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Piecewise even distributions, whose quantiles are worked by hand. */
class WeightedCellsTest {
  // One cell from 1 to 3, of any weight.
  @ParameterizedTest
  @CsvSource({"0.01, 1.02", "0.25, 1.5", "0.5, 2", "0.9, 2.8", "0.999, 2.998"})
  void oneCellIsEven(double chance, double at) {
    for (double weight : new double[] {0.01, 1, 700}) {
      WeightedCells cells = new WeightedCells();
      cells.add(2, 2, weight);
      assertEquals(at, cells.quantile(chance), 1e-8);
    }
  }

  // Weight 1 from -4 to -2, weight 3 from 0 to 1, weight 4 from 0.5 to 4.5: eight in all. Below 0.5
  // lie 1 + 1.5; below 1 lie 1 + 3 + 0.5.
  @ParameterizedTest
  @CsvSource({
    "0.0625, -3",
    "0.1125, -2.2",
    "0.25, 0.333333333",
    "0.3125, 0.5",
    "0.5625, 1",
    "0.75, 2.5",
    "0.9921875, 4.4375"
  })
  void cellsMayLieApartAndOverlap(double chance, double at) {
    for (double scale : new double[] {1e-6, 1, 1e6}) {
      WeightedCells cells = new WeightedCells();
      cells.add(2.5, 4, 4 * scale);
      cells.add(-3, 2, 1 * scale);
      cells.add(0.5, 1, 3 * scale);
      assertEquals(at, cells.quantile(chance), 1e-7);
    }
  }

  @Test
  void aNarrowHeapInAWideBedIsFound() {
    // 0.9 of the weight within a thousandth about 70, the rest even from 0 to 100: 0.07 lies below.
    WeightedCells cells = new WeightedCells();
    cells.add(50, 100, 0.1);
    cells.add(70, 1e-3, 0.9);
    assertEquals(70, cells.quantile(0.52), 1e-6);
    assertEquals(20, cells.quantile(0.02), 1e-6);
    assertEquals(95, cells.quantile(0.995), 1e-6);
  }

  // From 1 to 3 the density rises from 0 to 1, so that (x - 1)^2 / 4 lie below x; or falls.
  @ParameterizedTest
  @CsvSource({"0.01, 1.2", "0.25, 2", "0.81, 2.8"})
  void aCellMayRiseOrFall(double chance, double at) {
    for (double weight : new double[] {0.01, 700}) {
      WeightedCells rising = new WeightedCells();
      rising.add(2, 2, weight, 2 * weight);
      assertEquals(at, rising.quantile(chance), 1e-8);
      WeightedCells falling = new WeightedCells();
      falling.add(2, 2, weight, -2 * weight);
      assertEquals(4 - at, falling.quantile(1 - chance), 1e-8);
    }
  }

  @Test
  void risingCellsAreFoundAmongMany() {
    // The density 2x from 0 to 1, so that x^2 lie below x, in 20 cells of growing width.
    WeightedCells cells = new WeightedCells();
    for (int k : new int[] {19, 3, 11, 0, 17, 8, 2, 14, 6, 10, 1, 18, 5, 13, 7, 16, 4, 12, 9, 15}) {
      double left = k * k / 400.0;
      double right = (k + 1) * (k + 1) / 400.0;
      double wide = right - left;
      cells.add((left + right) / 2, wide, right * right - left * left, 2 * wide * wide);
    }
    for (double x : new double[] {0.07, 0.3, 0.62, 0.955}) {
      assertEquals(x, cells.quantile(x * x), 1e-7);
    }
  }

  @Test
  void holdsManyCells() {
    // The cells k to k + 1, k = 0, ..., 999, each with weight 2: even from 0 to 1000.
    WeightedCells cells = new WeightedCells();
    for (int k = 0; k < 1000; k++) {
      cells.add(k + 0.5, 1, 2);
    }
    assertEquals(123.4, cells.quantile(0.1234), 1e-5);
    assertEquals(999, cells.quantile(0.999), 1e-5);
  }

  @Test
  void aCellWithHardlyAnyWidthIsItsCentre() {
    WeightedCells cells = new WeightedCells();
    cells.add(5, 1e-10, 1);
    assertEquals(5, cells.quantile(0.3), 1e-9);
    cells.add(7, 1e-10, 3);
    assertEquals(5, cells.quantile(0.2), 1e-6);
    assertEquals(7, cells.quantile(0.9), 1e-6);
  }
}
