package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is carried along from change to change against what is added up anew. */
class TrialPlanTest {
  private static final double CLOSE = 1e-9;

  private static final class Walk {
    final StowProblem problem;
    final int mostMoves;
    final Random random;
    final TrialPlan trial;

    Walk(int seed) {
      problem = RandomProblems.of(seed);
      random = new Random(seed);
      mostMoves = random.nextBoolean() ? Integer.MAX_VALUE : random.nextInt(problem.boxCount);
      trial = new TrialPlan(problem, mostMoves);
      trial.start(random.ints(problem.boxCount, 0, problem.placeCount).toArray());
    }

    TrialPlan anew(int[] place) {
      TrialPlan fresh = new TrialPlan(problem, mostMoves);
      fresh.start(place);
      return fresh;
    }

    boolean allowed(int[] place) {
      return IntStream.range(0, place.length).allMatch(box -> problem.allowed[box][place[box]]);
    }

    /** One proposal of any kind; checks the answer and all sums after it. */
    void step() {
      int[] before = trial.place.clone();
      double penalty = 20 * random.nextDouble();
      double rise = 20 * random.nextDouble() - 5;
      int[] then = before.clone();
      boolean changed = propose(then, penalty, rise);
      TrialPlan old = anew(before);
      if (allowed(then) && !Arrays.equals(then, before)) {
        TrialPlan fresh = anew(then);
        double rises = fresh.total() - old.total() + penalty * (fresh.broken() - old.broken());
        if (Math.abs(rises - rise) > CLOSE) {
          assertEquals(rises <= rise, changed, "rises " + rises + ", accepted " + rise);
        }
      }
      int[] expected = changed ? then : before;
      assertEquals(Arrays.toString(expected), Arrays.toString(trial.place));
      TrialPlan sums = anew(expected);
      assertEquals(sums.total(), trial.total(), CLOSE);
      assertEquals(sums.broken(), trial.broken(), CLOSE);
      assertEquals(problem.moves(expected), trial.moved().count());
      boolean kept = problem.feasible(expected) && problem.moves(expected) <= mostMoves;
      assertEquals(kept, trial.broken() == 0, "broken " + trial.broken());
      assertTrue(kept || trial.broken() > 0);
      int[] away =
          IntStream.range(0, trial.moved().count()).map(trial.moved()::get).sorted().toArray();
      int[] really =
          IntStream.range(0, expected.length)
              .filter(box -> expected[box] != problem.now[box])
              .toArray();
      assertEquals(Arrays.toString(really), Arrays.toString(away));
    }

    private boolean propose(int[] then, double penalty, double rise) {
      int[] boxes = random.ints(0, then.length).distinct().limit(3).toArray();
      int a = boxes[0];
      int b = boxes[1];
      int c = boxes[2];
      int pa = then[a];
      int pb = then[b];
      int pc = then[c];
      int to = (pa + 1 + random.nextInt(problem.placeCount - 1)) % problem.placeCount;
      switch (random.nextInt(4)) {
        case 0:
          then[a] = to;
          return trial.move(a, to, penalty, rise);
        case 1:
          if (pa == pb) {
            return false;
          }
          then[a] = pb;
          then[b] = pa;
          return trial.swap(a, b, penalty, rise);
        case 2:
          if (pa == pb || pb == pc || pc == pa) {
            return false;
          }
          then[a] = pb;
          then[b] = pc;
          then[c] = pa;
          return trial.together(a, pb, b, pc, c, pa, penalty, rise);
        default:
          int home = problem.now[b];
          if (pb == home) {
            return false;
          }
          then[a] = to;
          then[b] = home;
          return trial.together(a, to, b, home, a, to, penalty, rise);
      }
    }
  }

  @Test
  void sumsCarriedAlongAreThoseAddedUpAnew() {
    for (int seed = 0; seed < 40; seed++) {
      Walk walk = new Walk(seed);
      for (int at = 0; at < 150; at++) {
        walk.step();
      }
    }
  }

  @Test
  void totalIsTheMomentAndATrifleForEachMovedBox() {
    for (int seed = 0; seed < 40; seed++) {
      Walk walk = new Walk(seed);
      int[] place = walk.trial.place;
      double expected = walk.problem.moment(place) * 1e-12 + 1e-6 * walk.problem.moves(place);
      assertEquals(expected, walk.trial.total(), CLOSE);
    }
  }

  @Test
  void aBoxThatMayNotStandThereStartsInItsCheapestPlace() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      TrialPlan trial = new TrialPlan(problem, Integer.MAX_VALUE);
      trial.start(problem.now);
      for (int box = 0; box < problem.boxCount; box++) {
        int at = trial.place[box];
        if (problem.allowed[box][problem.now[box]]) {
          assertEquals(problem.now[box], at);
          continue;
        }
        for (int other : trial.costs().options(box)) {
          assertTrue(problem.allowed[box][other]);
          assertTrue(problem.momentKgM(box, at) <= problem.momentKgM(box, other));
        }
      }
    }
  }

  @Test
  void spreadIsTheMeanRangeOfCosts() {
    // 2 kg over 3 m, and 4 kg over 3 m where only one place is open: 6 kg m and 0.
    StowProblem problem =
        new StowProblem(
            new long[] {2_000_000, 4_000_000},
            new long[] {1, 1},
            new long[] {1_000_000, 4_000_000},
            new long[] {0, 0},
            new long[] {StowProblem.UNLIMITED, StowProblem.UNLIMITED},
            new long[] {StowProblem.UNLIMITED, StowProblem.UNLIMITED},
            new boolean[][] {{true, true}, {true, false}},
            new int[] {0, 0},
            -StowProblem.UNLIMITED,
            StowProblem.UNLIMITED);
    assertEquals(3, new PlaceCosts(problem).spread(), 1e-5);
  }

  @Test
  void aBreachIsCountedInAverageBoxes() {
    StowProblem problem =
        new StowProblem(
            new long[] {2_000, 4_000},
            new long[] {100, 300},
            new long[] {1_000, 4_000},
            new long[] {-50, 40},
            new long[] {5_000, StowProblem.UNLIMITED},
            new long[] {StowProblem.UNLIMITED, 250},
            new boolean[][] {{true, true}, {true, true}},
            new int[] {0, 0},
            -250_000,
            200_000);
    Breach breach = new Breach(problem, 1);
    assertEquals(0, breach.ofPlace(0, 5_000, 9_999));
    assertEquals(0.05 + 1_500 / 3_000.0, breach.ofPlace(0, 6_500, 9_999), CLOSE);
    assertEquals(0, breach.ofPlace(1, 9_999, 250));
    assertEquals(0.05 + 50 / 200.0, breach.ofPlace(1, 9_999, 300), CLOSE);
    assertEquals(0, breach.ofPlan(0, 200_000, 1));
    assertEquals(0, breach.ofPlan(0, -250_000, 1));
    // An average box of 3000 mg at the widest offset, 50 um, has 150 000 mg um.
    assertEquals(0.05 + 30_000 / 150_000.0, breach.ofPlan(0, 230_000, 0), CLOSE);
    assertEquals(0.05 + 15_000 / 150_000.0, breach.ofPlan(0, -265_000, 0), CLOSE);
    assertEquals(0.3 + 2 * 0.7, breach.ofPlan(0.3, 0, 3), CLOSE);
    assertEquals(0, Breach.withoutRounding(0.02));
    assertEquals(0.05, Breach.withoutRounding(0.05));
  }

  @Test
  void aSecondStartForgetsTheFirst() {
    for (int seed = 0; seed < 40; seed++) {
      Walk walk = new Walk(seed);
      walk.trial.start(walk.problem.now);
      TrialPlan fresh = walk.anew(walk.problem.now);
      assertEquals(fresh.broken(), walk.trial.broken(), 0);
      assertEquals(fresh.total(), walk.trial.total(), 0);
    }
  }

  @Test
  void whatJustKeepsEveryLimitIsFeasible() {
    StowProblem problem = twoBoxes(6, 40, -20, 20);
    assertTrue(problem.feasible(new int[] {0, 0}));
    assertFalse(twoBoxes(5, 40, -20, 20).feasible(new int[] {0, 0}), "too heavy");
    assertFalse(twoBoxes(6, 39, -20, 20).feasible(new int[] {0, 0}), "too big");
    assertTrue(twoBoxes(6, 40, 12, 12).feasible(new int[] {0, 0}), "2 x 2 + 4 x 2 to the side");
    assertFalse(twoBoxes(6, 40, 13, 20).feasible(new int[] {0, 0}));
    assertFalse(twoBoxes(6, 40, -20, 11).feasible(new int[] {0, 0}));
  }

  private static StowProblem twoBoxes(long load, long volume, long lowest, long highest) {
    return new StowProblem(
        new long[] {2, 4},
        new long[] {10, 30},
        new long[] {1, 2},
        new long[] {2, 0},
        new long[] {load, load},
        new long[] {volume, volume},
        new boolean[][] {{true, true}, {true, true}},
        new int[] {0, 0},
        lowest,
        highest);
  }
}
