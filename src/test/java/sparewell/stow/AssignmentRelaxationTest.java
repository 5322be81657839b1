package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bounds with each box in any number of places, against exhaustive search on small problems. */
class AssignmentRelaxationTest {
  private static final double CLOSE = 1e-7;

  @Test
  void whateverTheMultipliersNoPlanCostsLess() {
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      AssignmentRelaxation bound = new AssignmentRelaxation(problem);
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
          new AssignmentRelaxation(problem)
              .ascend(RandomProblems.open(problem), problem.boxCount, least, 400, 1.8);
      assertTrue(found <= least + CLOSE);
      gaps += (least - found) / Math.abs(least);
      solved++;
    }
    assertTrue(gaps / solved < 0.05, "mean gap " + gaps / solved);
  }

  @Test
  void itsBoundIsNoLessThanThatOfTheLimitsItStartsFrom() {
    double gained = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      boolean[][] open = RandomProblems.open(problem);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      LimitRelaxation limits = new LimitRelaxation(problem);
      AssignmentRelaxation places = new AssignmentRelaxation(problem);
      double known = limits.ascend(open, problem.boxCount, least, 500, 0.8);
      places.start(limits, open);
      double bound = places.evaluate(open, problem.boxCount);
      assertTrue(bound >= known - CLOSE, "seed " + seed);
      gained += (bound - known) / (least - known + CLOSE);
    }
    assertTrue(gained > 10, "of what is left to gain, in all " + gained);
  }

  /** A multiplier of 0 that would have to fall takes no part in the length of a step. */
  @Test
  void aLimitThatDoesNotBindSlowsNoAscent() {
    double gaps = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      boolean[][] open = RandomProblems.open(problem);
      double few = new AssignmentRelaxation(problem).ascend(open, 30, least, 20, 1.8);
      double many = new AssignmentRelaxation(problem).ascend(open, 7_000, least, 20, 1.8);
      assertEquals(few, many, CLOSE, "seed " + seed);
      gaps += (least - many) / Math.abs(least);
    }
    assertTrue(gaps / 100 < 0.1, "mean gap " + gaps / 100);
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
      AssignmentRelaxation bound = new AssignmentRelaxation(problem);
      bound.ascend(open, problem.boxCount, least, 200, 1.8);
      closed += bound.fix(open, problem.boxCount, least + 1e-6);
      double left = ExhaustiveSearch.leastByMoves(RandomProblems.with(problem, open))[open.length];
      assertEquals(least, left, CLOSE);
    }
    assertTrue(closed > 100, "closed: " + closed);
  }
}
