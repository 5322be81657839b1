package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bounds against exhaustive search on small problems. */
class PriceBoundTest {
  private static final double CLOSE = 1e-7;

  @Test
  void whateverThePricesNoPlanCostsLess() {
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      PriceBound bound = new PriceBound(problem);
      Random random = new Random(seed);
      for (int turn = 0; turn < 20; turn++) {
        double[] prices = random.doubles(problem.boxCount + 2, -5, 30).toArray();
        prices[problem.boxCount + 1] = Math.abs(prices[problem.boxCount + 1]);
        bound.prices(prices);
        for (int moves = 0; moves < least.length; moves++) {
          assertTrue(bound.evaluate(RandomProblems.open(problem), moves) <= least[moves] + CLOSE);
        }
      }
    }
  }

  @Test
  void anAscentComesNearTheBestPlan() {
    double gaps = 0;
    int solved = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      double found =
          new PriceBound(problem)
              .ascend(RandomProblems.open(problem), problem.boxCount, 0, least, 400, 1.8);
      assertTrue(found <= least + CLOSE);
      gaps += (least - found) / Math.abs(least);
      solved++;
    }
    assertTrue(gaps / solved < 0.05, "mean gap " + gaps / solved);
  }

  @Test
  void noPlaceOfABestPlanIsStruckOut() {
    int struck = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      if (least == Double.POSITIVE_INFINITY) {
        continue;
      }
      boolean[][] open = RandomProblems.open(problem);
      PriceBound bound = new PriceBound(problem);
      bound.ascend(open, problem.boxCount, 0, least, 200, 1.8);
      struck += bound.strikeOut(open, problem.boxCount, least + 1e-6);
      double left = ExhaustiveSearch.leastByMoves(RandomProblems.with(problem, open))[open.length];
      assertEquals(least, left, CLOSE);
    }
    assertTrue(struck > 100, "struck out: " + struck);
  }
}
