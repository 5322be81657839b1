package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Bounds with relaxed limits against exhaustive search on small problems. */
class LimitRelaxationTest {
  private static final double CLOSE = 1e-7;

  @Test
  void noPlanCostsLess() {
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      LimitRelaxation limits = new LimitRelaxation(problem);
      for (int moves = least.length - 1; moves >= 0; moves--) {
        double target = Math.min(1_000, least[moves]);
        for (int steps : new int[] {1, 10, 100}) {
          double bound = limits.ascend(RandomProblems.open(problem), moves, target, steps, 0.8);
          assertTrue(bound <= least[moves] + CLOSE, "seed " + seed + " with " + moves);
        }
      }
    }
  }

  @Test
  void anAscentComesNearLinearProgramming() {
    double gaps = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount()];
      double found =
          new LimitRelaxation(problem)
              .ascend(RandomProblems.open(problem), problem.boxCount(), least, 2_000, 0.8);
      gaps += (least - found) / Math.abs(least);
    }
    assertTrue(gaps / 100 < 0.08, "mean gap " + gaps / 100);
  }
}
