package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bounds against exhaustive search on small problems. */
class LagrangianBoundTest {
  private static final double CLOSE = 1e-7;

  @Test
  void whateverTheMultipliersNoPlanCostsLess() {
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      LagrangianBound bound = new LagrangianBound(problem);
      Random random = new Random(seed);
      for (int turn = 0; turn < 20; turn++) {
        double[] multipliers = random.doubles(problem.boxCount + 2, -5, 30).toArray();
        multipliers[problem.boxCount + 1] = Math.abs(multipliers[problem.boxCount + 1]);
        bound.multipliers(multipliers);
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
          new LagrangianBound(problem)
              .ascend(RandomProblems.open(problem), problem.boxCount, 0, least, 400, 1.8);
      assertTrue(found <= least + CLOSE);
      gaps += (least - found) / Math.abs(least);
      solved++;
    }
    assertTrue(gaps / solved < 0.05, "mean gap " + gaps / solved);
  }

  @Test
  void noPlaceOfABestPlanIsClosed() {
    int closed = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      if (least == Double.POSITIVE_INFINITY) {
        continue;
      }
      boolean[][] open = RandomProblems.open(problem);
      LagrangianBound bound = new LagrangianBound(problem);
      bound.ascend(open, problem.boxCount, 0, least, 200, 1.8);
      closed += bound.fix(open, problem.boxCount, least + 1e-6);
      double left = ExhaustiveSearch.leastByMoves(RandomProblems.with(problem, open))[open.length];
      assertEquals(least, left, CLOSE);
    }
    assertTrue(closed > 100, "closed: " + closed);
  }
}
