package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What is kept is within all limits, costs what it says, and comes near the best there is. */
class PlansTest {
  private static final double CLOSE = 1e-7;

  @Test
  void coolingsFindTheBestForEveryNumberOfMoves() {
    int there = 0;
    int best = 0;
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = StowCases.problem(6 + seed % 2, 3 + seed % 2, seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      Plans plans = new Plans(problem);
      for (int k = 1; k <= problem.boxCount; k++) {
        plans.anneal(problem.now, k, 2_000, 0.5, k);
      }
      for (int k = 0; k <= problem.boxCount; k++) {
        int[] plan = plans.plan(k);
        assertEquals(plan.length == 0, plans.cost(k) == Double.POSITIVE_INFINITY);
        if (plan.length > 0) {
          assertTrue(problem.feasible(plan));
          assertTrue(problem.moves(plan) <= k);
          assertEquals(problem.cost(plan), plans.cost(k), CLOSE);
          assertTrue(plans.cost(k) >= least[k] - CLOSE);
        }
        there += least[k] < Double.POSITIVE_INFINITY ? 1 : 0;
        best += plans.cost(k) < least[k] + CLOSE ? 1 : 0;
      }
    }
    assertTrue(best > 0.97 * there, best + " of " + there);
  }

  @Test
  void sameSeedSamePlans() {
    StowProblem problem = StowCases.problem(18, 6, 1);
    Plans one = new Plans(problem);
    Plans two = new Plans(problem);
    one.anneal(problem.now, 18, 20_000, 0.5, 7);
    two.anneal(problem.now, 18, 20_000, 0.5, 7);
    assertArrayEquals(one.plan(18), two.plan(18));
  }

  @Test
  void aDearMoveIsNotMade() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      Plans plans = new Plans(problem);
      for (int k = 1; k <= problem.boxCount; k++) {
        plans.anneal(problem.now, k, 4_000, 0.5, k);
      }
      for (double price : new double[] {0, 0.5, 2, 1e6}) {
        int moves = plans.worthwhile(price);
        for (int k = 0; k <= problem.boxCount && moves >= 0; k++) {
          assertTrue(plans.cost(moves) + price * moves <= plans.cost(k) + price * k + CLOSE);
        }
        assertTrue(moves <= 0 || price < 1e6 || least[moves - 1] == Double.POSITIVE_INFINITY);
      }
    }
  }
}
