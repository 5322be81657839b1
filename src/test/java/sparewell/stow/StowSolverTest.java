package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The solver against exhaustive search, on small invented problems with all limits. */
class StowSolverTest {
  private static final double CLOSE = 1e-7;

  static IntStream seeds() {
    return IntStream.range(0, 60);
  }

  private static StowProblem planted(int seed) {
    StowCases.Case drawn = StowCases.planted(6 + seed % 2, 3 + seed % 2, seed);
    AboardLoads aboard = AboardLoads.of(drawn.season(), drawn.onHand());
    return new StowSetup(drawn.season(), aboard).problem;
  }

  private static void agrees(StowProblem problem) {
    double[] least = ExhaustiveSearch.leastByMoves(problem);
    StowSolver solver = new StowSolver(problem, Effort.standard(20));
    StowSolver.Curve curve = solver.curve();
    double best = least[problem.boxCount];
    if (best == Double.POSITIVE_INFINITY) {
      assertFalse(curve.best().found());
      assertTrue(curve.best().proven(), "that there is no plan");
      return;
    }
    assertEquals(best, curve.best().moment(), CLOSE);
    assertTrue(curve.best().proven());
    for (int k = 0; k < curve.rows().size(); k++) {
      StowSolver.Answer row = curve.rows().get(k);
      assertEquals(least[k] < Double.POSITIVE_INFINITY, row.found(), "found with " + k);
      if (row.found()) {
        assertEquals(least[k], row.moment(), CLOSE, "moment with " + k);
        assertTrue(row.bound() <= least[k] + CLOSE, "bound with " + k);
        assertTrue(row.proven(), "proven with " + k);
        assertTrue(problem.feasible(row.array()));
        assertTrue(problem.moves(row.array()) <= k);
      }
    }
    assertEquals(best, least[curve.rows().size() - 1], CLOSE, "the curve ends at the best plan");
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void agreesWithExhaustiveSearchOnRandomLimits(int seed) {
    agrees(RandomProblems.of(seed));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void agreesWithExhaustiveSearchOnTightBoats(int seed) {
    agrees(planted(seed));
  }

  @Test
  void sameProblemGivesSameAnswer() {
    StowProblem problem = planted(11);
    StowSolver.Curve one = new StowSolver(problem, Effort.standard(20)).curve();
    StowSolver.Curve two = new StowSolver(problem, Effort.standard(20)).curve();
    assertEquals(one, two);
  }

  @Test
  void aRowByItselfIsTheBestForItsNumberOfMoves() {
    for (int seed = 0; seed < 30; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      StowSolver solver = new StowSolver(problem, Effort.standard(20));
      StowSolver.Answer best = solver.best();
      for (int k = 0; k < problem.boxCount; k++) {
        StowSolver.Answer row = solver.row(k, List.of(best.array()));
        assertEquals(least[k] < Double.POSITIVE_INFINITY, row.found());
        assertTrue(row.proven(), "seed " + seed + ", moves " + k);
        if (row.found()) {
          assertEquals(least[k], row.moment(), CLOSE);
          assertEquals(row.moment(), row.bound(), CLOSE);
        }
      }
    }
  }
}
