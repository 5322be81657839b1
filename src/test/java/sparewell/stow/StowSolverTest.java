package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
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
  void movesCanBeCarriedOutInTheirOrder() {
    for (int seed = 0; seed < 40; seed++) {
      StowCases.Case drawn = StowCases.planted(14, 5, seed);
      StowProblem problem =
          new StowSetup(drawn.season(), AboardLoads.of(drawn.season(), drawn.onHand())).problem;
      StowSolver.Answer best = new StowSolver(problem, Effort.standard(20)).best();
      assertTrue(best.found(), "a plan was planted");
      carryOut(problem, best.array());
    }
  }

  private static void carryOut(StowProblem problem, int[] target) {
    int[] at = problem.now.clone();
    int next = 1;
    for (MoveOrder.Entry entry : MoveOrder.of(problem, target)) {
      switch (entry.kind()) {
        case LIFT_OUT -> at[entry.box()] = -1;
        case SWAP -> {
          assertEquals(next, entry.number().getAsInt());
          next += 2;
          assertEquals(at[entry.other()], entry.to());
          at[entry.other()] = at[entry.box()];
          at[entry.box()] = entry.to();
          assertRoom(problem, at, entry.to());
          assertRoom(problem, at, entry.from());
        }
        case MOVE, PUT_IN -> {
          assertEquals(next++, entry.number().getAsInt());
          at[entry.box()] = entry.to();
          assertRoom(problem, at, entry.to());
        }
        default -> throw new IllegalStateException();
      }
    }
    assertEquals(Arrays.toString(target), Arrays.toString(at));
    assertEquals(problem.moves(target), next - 1);
  }

  private static void assertRoom(StowProblem problem, int[] at, int place) {
    long load = 0;
    long volume = 0;
    for (int box = 0; box < at.length; box++) {
      if (at[box] == place) {
        load += problem.weightMg[box];
        volume += problem.volumeMm3[box];
      }
    }
    assertTrue(load <= problem.loadRoomMg[place]);
    assertTrue(volume <= problem.volumeRoomMm3[place]);
  }
}
