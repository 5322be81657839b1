package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The bound at given prices against the same sum with every set of boxes tried in every place. */
class PricedPlacesTest {
  private static final double CLOSE = 1e-9;

  private static final class Draw {
    final StowProblem problem;
    final boolean[][] allowed;
    final Prices prices;
    final int mostMoves;
    final PricedPlaces places;

    Draw(int seed) {
      problem = RandomProblems.of(seed);
      Random random = new Random(seed);
      allowed = RandomProblems.open(problem);
      for (boolean[] row : allowed) {
        if (random.nextInt(6) == 0) {
          Arrays.fill(row, false);
          row[random.nextInt(row.length)] = true;
        } else if (random.nextInt(40) == 0) {
          Arrays.fill(row, false);
        }
      }
      prices = new Prices(random.doubles(problem.boxCount, -2, 30).toArray(), 1);
      prices.side = random.nextInt(3) == 0 ? 0 : random.nextDouble() * 4 - 2;
      mostMoves = random.nextInt(problem.boxCount + 1) - 1;
      prices.move = mostMoves < 0 ? 0 : random.nextDouble();
      places = new PricedPlaces(problem, prices);
    }

    /** Infinite where a box has no place or the boxes with one place do not fit. */
    double everySet(boolean[][] open) {
      double limit = prices.side >= 0 ? problem.sideHighest : problem.sideLowest;
      double total = -prices.side * limit * 1e-12 - Math.max(0, mostMoves) * prices.move;
      int[] only = new int[problem.boxCount];
      for (int box = 0; box < only.length; box++) {
        int count = 0;
        for (int at = 0; at < problem.placeCount; at++) {
          count += open[box][at] ? 1 : 0;
          only[box] = open[box][at] ? at : only[box];
        }
        if (count == 0) {
          return Double.POSITIVE_INFINITY;
        }
        only[box] = count == 1 ? only[box] : -1;
        total += count == 1 ? cost(box, only[box]) : prices.box[box];
      }
      for (int at = 0; at < problem.placeCount; at++) {
        double most = Double.NEGATIVE_INFINITY;
        for (int set = 0; set < 1 << problem.boxCount; set++) {
          most = Math.max(most, worth(set, at, open, only));
        }
        total -= most;
      }
      return total;
    }

    private double worth(int set, int at, boolean[][] open, int[] only) {
      long load = 0;
      long volume = 0;
      double worth = 0;
      for (int box = 0; box < problem.boxCount; box++) {
        boolean in = (set >> box & 1) == 1;
        if (only[box] == at && !in || only[box] >= 0 && only[box] != at && in) {
          return Double.NEGATIVE_INFINITY;
        }
        if (in && !open[box][at]) {
          return Double.NEGATIVE_INFINITY;
        }
        load += in ? problem.weightMg[box] : 0;
        volume += in ? problem.volumeMm3[box] : 0;
        worth += in && only[box] < 0 ? prices.box[box] - cost(box, at) : 0;
      }
      boolean fits = load <= problem.loadRoomMg[at] && volume <= problem.volumeRoomMm3[at];
      return fits ? worth : Double.NEGATIVE_INFINITY;
    }

    private double cost(int box, int at) {
      return problem.weightMg[box] * problem.stationUm[at] * 1e-12
          + prices.side * problem.weightMg[box] * problem.offsetUm[at] * 1e-12
          + (at == problem.now[box] ? 0 : prices.move);
    }
  }

  @Test
  void isTheSumOfTheMostValuableSets() {
    int finite = 0;
    for (int seed = 0; seed < 300; seed++) {
      Draw draw = new Draw(seed);
      double expected = draw.everySet(draw.allowed);
      assertEquals(expected, draw.places.evaluate(draw.allowed, draw.mostMoves), CLOSE);
      finite += expected < Double.POSITIVE_INFINITY ? 1 : 0;
    }
    assertTrue(finite > 200 && finite < 300, "both kinds were drawn: " + finite);
  }

  @Test
  void tellsWhichPlaceTookWhichBox() {
    for (int seed = 0; seed < 300; seed++) {
      Draw draw = new Draw(seed);
      double bound = draw.places.evaluate(draw.allowed, draw.mostMoves);
      if (bound == Double.POSITIVE_INFINITY) {
        continue;
      }
      StowProblem problem = draw.problem;
      double limit = draw.prices.side >= 0 ? problem.sideHighest : problem.sideLowest;
      double sum = -draw.prices.side * limit * 1e-12;
      sum -= Math.max(0, draw.mostMoves) * draw.prices.move;
      int moves = 0;
      double side = 0;
      for (int box = 0; box < problem.boxCount; box++) {
        int holders = 0;
        for (int at = 0; at < problem.placeCount; at++) {
          if (draw.places.chosen(box, at)) {
            assertTrue(draw.allowed[box][at]);
            holders++;
            moves += at == problem.now[box] ? 0 : 1;
            side += problem.weightMg[box] * problem.offsetUm[at] * 1e-12;
            sum += draw.cost(box, at) - (draw.places.fixed(box) ? 0 : draw.prices.box[box]);
          }
        }
        sum += draw.places.fixed(box) ? 0 : draw.prices.box[box];
        assertEquals(draw.places.fixed(box) ? 0 : 1 - holders, draw.places.slack(box));
      }
      assertEquals(bound, sum, CLOSE, "the bound is that of the sets told");
      assertEquals(moves, draw.places.moves());
      double high = side - problem.sideHighest * 1e-12;
      double low = side - problem.sideLowest * 1e-12;
      double slack = draw.prices.side > 0 ? high : draw.prices.side < 0 ? low : 0;
      if (draw.prices.side == 0) {
        slack = high > 0 ? high : Math.min(0, low);
      }
      assertEquals(slack, draw.places.sideSlack(), CLOSE);
    }
  }

  @Test
  void boundOfABoxInAPlaceIsThatOfTheProblemWhereItStandsThere() {
    for (int seed = 0; seed < 100; seed++) {
      Draw draw = new Draw(seed);
      double bound = draw.places.evaluate(draw.allowed, draw.mostMoves);
      for (int box = 0; box < draw.problem.boxCount && bound < 1e300; box++) {
        if (draw.places.fixed(box)) {
          continue;
        }
        double[] forced = draw.places.forced(draw.allowed, bound, box);
        for (int at = 0; at < forced.length; at++) {
          boolean[][] there =
              Arrays.stream(draw.allowed).map(boolean[]::clone).toArray(boolean[][]::new);
          Arrays.fill(there[box], false);
          there[box][at] = draw.allowed[box][at];
          assertEquals(draw.everySet(there), forced[at], CLOSE, "seed " + seed);
        }
      }
    }
  }

  @Test
  void aToleranceLowersTheBoundByNoMoreThanThatInEachPlace() {
    for (int seed = 0; seed < 100; seed++) {
      Draw draw = new Draw(seed);
      draw.places.knapsackTolerance(0.3);
      double exact = draw.everySet(draw.allowed);
      double bound = draw.places.evaluate(draw.allowed, draw.mostMoves);
      if (exact < Double.POSITIVE_INFINITY) {
        assertTrue(bound <= exact + CLOSE);
        assertTrue(bound >= exact - 0.3 * draw.problem.placeCount - CLOSE);
      }
    }
  }
}
