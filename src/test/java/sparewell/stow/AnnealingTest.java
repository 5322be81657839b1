package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The plan kept is within all limits, costs what it says, and comes near the best there is. */
class AnnealingTest {
  private static final double CLOSE = 1e-7;

  private static Annealing annealing(StowProblem problem, BestPlans plans) {
    return new Annealing(problem, plans, new Repacking(problem));
  }

  @Test
  void coolingsFindTheBestForEveryNumberOfMoves() {
    int there = 0;
    int best = 0;
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = StowCases.problem(6 + seed % 2, 3 + seed % 2, seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      BestPlans plans = new BestPlans(problem);
      Annealing annealing = annealing(problem, plans);
      for (int k = 1; k <= problem.boxCount(); k++) {
        annealing.anneal(problem.now(), k, 4_000, k);
      }
      for (int k = 0; k <= problem.boxCount(); k++) {
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
    BestPlans one = new BestPlans(problem);
    BestPlans two = new BestPlans(problem);
    annealing(problem, one).anneal(problem.now(), 18, 20_000, 7);
    annealing(problem, two).anneal(problem.now(), 18, 20_000, 7);
    assertArrayEquals(one.plan(18), two.plan(18));
  }

  @Test
  void aMoveThatIsChargedTooMuchIsNotMade() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      BestPlans plans = new BestPlans(problem);
      Annealing annealing = annealing(problem, plans);
      for (int k = 1; k <= problem.boxCount(); k++) {
        annealing.anneal(problem.now(), k, 40_000, k);
      }
      for (double charge : new double[] {0, 0.5, 2, 1e6}) {
        int moves = plans.worthwhile(charge);
        assertEquals(plans.plan(problem.boxCount()).length > 0, moves >= 0);
        for (int k = 0; k <= problem.boxCount() && moves >= 0; k++) {
          double more = plans.cost(k) + charge * k - plans.cost(moves) - charge * moves;
          assertTrue(k < moves ? more > 1e-9 : more > -CLOSE, "of equals that with fewest moves");
        }
        assertTrue(moves <= 0 || charge < 1e6 || least[moves - 1] == Double.POSITIVE_INFINITY);
      }
    }
  }

  /** Three boxes of 10 where 15 and 12 have room: one is too many, and crowds the first least. */
  @Test
  void withoutAPlanTheClosestOneIsOverItsLimitsByLeast() {
    long[] rooms = {15, 12};
    long[] none = {StowProblem.UNLIMITED, StowProblem.UNLIMITED};
    double free = 0;
    double shut = Double.POSITIVE_INFINITY;
    double[][] open = {{free, free}, {free, free}, {free, free}};
    assertArrayEquals(new long[] {20, 10}, closest(rooms, none, open));
    assertArrayEquals(new long[] {20, 10}, closest(none, rooms, open));
    double[][] narrow = {{shut, free}, {shut, free}, {free, free}};
    assertArrayEquals(new long[] {10, 20}, closest(rooms, none, narrow));
  }

  private static long[] closest(long[] loadRoom, long[] volumeRoom, double[][] cost) {
    long[] tens = {10, 10, 10};
    int[] now = {0, 0, 0};
    StowProblem problem =
        new StowProblem(tens, tens, new long[2], loadRoom, volumeRoom, cost, now, -1, 1);
    Annealing annealing = annealing(problem, new BestPlans(problem));
    annealing.anneal(now, 3, 1_000, 1);
    return problem.sums(tens, annealing.closest());
  }
}
