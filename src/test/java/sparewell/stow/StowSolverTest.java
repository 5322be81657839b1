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
    return StowCases.problem(6 + seed % 2, 3 + seed % 2, seed);
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

  /** Without exact search: bounds of the first prices only, plans of a few hundred steps. */
  private static final Effort LITTLE = new Effort(2, 400, 0, 300, 0);

  /** Hardly any annealing; the search ends where the best plan is proven. */
  private static final Effort EXACT = new Effort(1, 500, 5_000_000, 0, 0);

  /** Whatever the effort, what is said of plans, of bounds and of proofs is true. */
  @Test
  void withLittleEffortTheCurveIsInOrder() {
    int best = 0;
    int unproven = 0;
    int rowsBest = 0;
    int rows = 0;
    for (int seed = 0; seed < 120; seed++) {
      StowProblem problem = seed < 60 ? planted(seed) : RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      StowSolver.Curve curve = new StowSolver(problem, LITTLE).curve();
      StowSolver.Answer top = curve.best();
      if (!top.found()) {
        assertEquals(List.of(), curve.rows());
        continue;
      }
      isTrue(problem, top, problem.boxCount, least);
      double bound = top.bound();
      for (int k = curve.rows().size() - 1; k >= 0; k--) {
        StowSolver.Answer row = curve.rows().get(k);
        isTrue(problem, row, k, least);
        boolean last = k == curve.rows().size() - 1;
        assertEquals(last, Math.abs(row.moment() - top.moment()) < CLOSE, "seed " + seed);
        if (row.found()) {
          assertTrue(row.bound() >= bound, "a bound for many moves holds for few, seed " + seed);
          bound = row.bound();
        }
        assertTrue(last || row.moment() >= curve.rows().get(k + 1).moment());
        rows += least[k] < Double.POSITIVE_INFINITY ? 1 : 0;
        rowsBest += row.found() && row.moment() < least[k] + CLOSE ? 1 : 0;
        unproven += row.proven() ? 0 : 1;
      }
      assertEquals(curve.rows().size() - 1, problem.moves(top.array()), "fewest moves");
      best += top.moment() < least[problem.boxCount] + CLOSE ? 1 : 0;
    }
    assertTrue(best >= 70, "best plans found: " + best);
    assertTrue(rowsBest >= 0.94 * rows, "best rows found: " + rowsBest + " of " + rows);
    assertTrue(unproven > 100, "rows that are not proven: " + unproven);
  }

  private static void isTrue(
      StowProblem problem, StowSolver.Answer answer, int moves, double[] least) {
    assertEquals(answer.found(), !answer.places().isEmpty());
    assertTrue(answer.moment() >= least[moves] - CLOSE);
    if (answer.found()) {
      assertTrue(problem.feasible(answer.array()));
      assertTrue(problem.moves(answer.array()) <= moves);
      assertEquals(problem.moment(answer.array()) * 1e-12, answer.moment(), CLOSE);
      assertTrue(answer.bound() <= least[moves] + CLOSE);
      assertEquals(answer.bound() == answer.moment(), answer.proven());
    }
  }

  @Test
  void withoutAPlanTheBoundIsOverEveryAssignment() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      StowSolver.Answer best = new StowSolver(problem, EXACT).best();
      if (!best.found()) {
        double most = 0;
        for (int box = 0; box < problem.boxCount; box++) {
          double moment = Double.NEGATIVE_INFINITY;
          for (int at = 0; at < problem.placeCount; at++) {
            moment = Math.max(moment, problem.allowed[box][at] ? problem.momentKgM(box, at) : -1e9);
          }
          most += moment;
        }
        assertEquals(most + 1, best.bound(), CLOSE);
        assertTrue(best.proven());
      }
    }
  }

  @Test
  void theClosestPlanIsOneThatBreaksLimitsLittle() {
    int none = 0;
    int least = 0;
    for (int seed = 0; seed < 80; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      if (ExhaustiveSearch.leastByMoves(problem)[problem.boxCount] == Double.POSITIVE_INFINITY) {
        none++;
        TrialPlan trial = new TrialPlan(problem, Integer.MAX_VALUE);
        trial.start(new StowSolver(problem, new Effort(3, 500, 0, 0, 0)).closest());
        double broken = trial.broken();
        Annealing long1 = new Annealing(problem, -1);
        long1.run(problem.now, 20_000, 0.5, 99);
        trial.start(long1.closest());
        least += broken < trial.broken() + CLOSE ? 1 : 0;
      }
    }
    assertTrue(least >= 0.9 * none, least + " of " + none);
    assertTrue(none > 50, "problems without a plan: " + none);
  }

  @Test
  void aRowStartsFromTheBestOfWhatIsThere() {
    int worse = 0;
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = planted(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      StowSolver solver = new StowSolver(problem, new Effort(1, 0, 0, 0, 0));
      int[] best = new StowSolver(problem, EXACT).best().array();
      int moves = problem.moves(best);
      StowSolver.Answer row = solver.row(moves, List.of(best));
      assertEquals(least[problem.boxCount], row.moment(), CLOSE);
      if (moves > 0) {
        StowSolver.Answer fewer = solver.row(moves - 1, List.of(best, problem.now));
        assertTrue(!fewer.found() || problem.moves(fewer.array()) < moves, "best moves too many");
      }
      if (problem.feasible(problem.now)) {
        for (int box = 0; box < problem.boxCount; box++) {
          for (int at = 0; at < problem.placeCount; at++) {
            int[] other = problem.now.clone();
            other[box] = at;
            double now = problem.moment(problem.now) * 1e-12;
            double then = problem.moment(other) * 1e-12;
            double better = problem.feasible(other) ? Math.min(now, then) : now;
            assertEquals(better, solver.row(1, List.of(other)).moment(), CLOSE);
            worse += problem.feasible(other) && then > now ? 1 : 0;
          }
        }
      }
    }
    assertTrue(worse > 20, "plans worse than the present stow: " + worse);
  }

  @Test
  void aRowIsAnnealedToo() {
    int there = 0;
    int best = 0;
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = planted(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      StowSolver solver = new StowSolver(problem, new Effort(1, 0, 0, 2_000, 0));
      for (int k = 1; k < problem.boxCount; k++) {
        if (least[k] < Double.POSITIVE_INFINITY) {
          there++;
          best += solver.row(k, List.of()).moment() < least[k] + CLOSE ? 1 : 0;
        }
      }
    }
    assertTrue(best > 0.9 * there, "best " + best + " of " + there);
  }

  @Test
  void valuesWithinAHundredMillionthAreTheSame() {
    assertEquals(1e-8, StowSolver.tolerance(0.5), 1e-20);
    assertEquals(5e-6, StowSolver.tolerance(500), 1e-18);
    assertEquals(5e-6, StowSolver.tolerance(-500), 1e-18);
  }
}
