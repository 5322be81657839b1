package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
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

  /** Limits drawn at random, so that some problems have no plan at all. */
  private static StowProblem random(int seed) {
    Random random = new Random(seed);
    int boxes = 3 + random.nextInt(5);
    int places = 2 + random.nextInt(3);
    long[] weight = random.longs(boxes, 200_000, 9_000_000).toArray();
    long[] volume = random.longs(boxes, 1_000_000, 12_000_000).toArray();
    long[] station = random.longs(places, -300_000, 5_000_000).toArray();
    long[] offset = random.longs(places, -800_000, 800_000).toArray();
    double slack = 1.0 + 0.8 * random.nextDouble();
    long[] loadRoom = new long[places];
    long[] volumeRoom = new long[places];
    for (int at = 0; at < places; at++) {
      double share = slack * (0.5 + random.nextDouble()) / places;
      loadRoom[at] =
          random.nextInt(3) == 0
              ? StowProblem.UNLIMITED
              : (long) (share * 1.2 * Arrays.stream(weight).sum());
      volumeRoom[at] = (long) (share * Arrays.stream(volume).sum());
    }
    boolean[][] allowed = new boolean[boxes][places];
    int[] now = new int[boxes];
    for (int box = 0; box < boxes; box++) {
      for (int at = 0; at < places; at++) {
        allowed[box][at] = random.nextInt(5) > 0;
      }
      allowed[box][random.nextInt(places)] = true;
      now[box] = random.nextInt(places);
    }
    long side = (long) (Arrays.stream(weight).sum() * 60_000.0 * (0.5 + 2 * random.nextDouble()));
    return new StowProblem(
        weight, volume, station, offset, loadRoom, volumeRoom, allowed, now, -side, side);
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
    agrees(random(seed));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void agreesWithExhaustiveSearchOnTightBoats(int seed) {
    agrees(planted(seed));
  }

  @Test
  void boundsOfTheRelaxationsLieUnderEveryPlanAndInOrder() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = random(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      double best = least[problem.boxCount];
      if (best == Double.POSITIVE_INFINITY) {
        continue;
      }
      double linear = new LinearBound(problem).ascend(problem.allowed, best, 500);
      double priced = new DualBound(problem).ascend(problem.allowed, best, 200, 1.0);
      assertTrue(linear <= best + CLOSE, "linear bound, seed " + seed);
      assertTrue(priced <= best + CLOSE, "priced places, seed " + seed);
      for (int k = 1; k < problem.boxCount; k++) {
        if (least[k] < Double.POSITIVE_INFINITY) {
          DualBound dual = new DualBound(problem);
          dual.mostMoves(k);
          double few = dual.ascend(problem.allowed, least[k], 200, 1.0);
          assertTrue(few <= least[k] + CLOSE, "priced moves, seed " + seed);
        }
      }
    }
  }

  @Test
  void neverStrikesOutTheBestPlan() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = random(seed);
      double best = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      if (best == Double.POSITIVE_INFINITY) {
        continue;
      }
      boolean[][] allowed = new boolean[problem.boxCount][];
      for (int box = 0; box < allowed.length; box++) {
        allowed[box] = problem.allowed[box].clone();
      }
      DualBound dual = new DualBound(problem);
      dual.ascend(allowed, best, 50, 1.0);
      dual.strikeOut(allowed, dual.evaluate(allowed), best + 1e-6);
      StowProblem left =
          new StowProblem(
              problem.weightMg,
              problem.volumeMm3,
              problem.stationUm,
              problem.offsetUm,
              problem.loadRoomMg,
              problem.volumeRoomMm3,
              allowed,
              problem.now,
              problem.sideLowest,
              problem.sideHighest);
      assertEquals(best, ExhaustiveSearch.leastByMoves(left)[problem.boxCount], CLOSE);
    }
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
