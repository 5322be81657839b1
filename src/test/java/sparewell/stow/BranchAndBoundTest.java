package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The exact search without the plans that annealing would hand it, against every plan. */
class BranchAndBoundTest {
  private static final double CLOSE = 1e-7;
  private static final double CEILING = 1e4;

  @Test
  void findsAndProvesTheBestPlanForEachNumberOfMoves() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      BranchAndBound search = new BranchAndBound(problem, CEILING);
      for (int k = problem.boxCount; k >= 0; k--) {
        Annealing plans = new Annealing(problem, k);
        double bound = search.search(k == problem.boxCount ? -1 : k, plans, 5_000_000);
        assertEquals(Math.min(CEILING, least[k]), bound, CLOSE, "seed " + seed + ", moves " + k);
        if (least[k] < CEILING) {
          assertEquals(least[k], plans.bestMoment(), CLOSE, "the plan itself, seed " + seed);
          assertTrue(problem.moves(plans.best()) <= k);
        }
      }
    }
  }

  @Test
  void cutShortItStillProvesABound() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      double best = least[problem.boxCount];
      double last = Double.NEGATIVE_INFINITY;
      for (long work : new long[] {0, 300, 3_000, 5_000_000}) {
        Annealing plans = new Annealing(problem, -1);
        BranchAndBound search = new BranchAndBound(problem, CEILING);
        double bound = search.search(-1, plans, work);
        assertTrue(bound <= best + CLOSE, "seed " + seed + ", work " + work);
        last = bound;
      }
      assertEquals(Math.min(CEILING, best), last, CLOSE);
    }
  }

  /** Boxes of this size were all proven when the search was made; a weaker one would not do it. */
  @Test
  void provesBoatsOfEighteenBoxesWithinTheWorkOfARun() {
    for (int seed = 1; seed <= 10; seed++) {
      StowCases.Case drawn = StowCases.planted(18, 6, seed);
      StowProblem problem =
          new StowSetup(drawn.season(), AboardLoads.of(drawn.season(), drawn.onHand())).problem;
      StowSolver.Answer answer = new StowSolver(problem, Effort.standard(18)).best();
      assertTrue(answer.proven(), "case " + seed);
    }
  }
}
