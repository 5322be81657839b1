package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Annealing by itself on problems so small that every plan can be tried. */
class AnnealingTest {
  private static final double CLOSE = 1e-7;

  private static Annealing cooled(StowProblem problem, int mostMoves, long steps) {
    Annealing plans = new Annealing(problem, mostMoves);
    plans.run(problem.now, steps, 0.5, 1);
    plans.run(problem.now, steps, 0.1, 2);
    return plans;
  }

  @Test
  void findsTheBestPlanForAllButEveryNumberOfMoves() {
    int found = 0;
    int best = 0;
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      for (int k = 0; k <= problem.boxCount; k++) {
        Annealing plans = cooled(problem, k == problem.boxCount ? -1 : k, 6_000);
        assertTrue(plans.bestMoment() >= least[k] - CLOSE, "seed " + seed + ", moves " + k);
        if (least[k] < Double.POSITIVE_INFINITY) {
          best += plans.bestMoment() < least[k] + CLOSE ? 1 : 0;
          assertTrue(problem.feasible(plans.best()));
          assertTrue(problem.moves(plans.best()) <= k);
          found++;
        } else {
          assertEquals(0, plans.best().length);
        }
      }
    }
    assertTrue(found > 70, "plans found: " + found);
    assertTrue(best > 0.9 * found, "best " + best + " of " + found);
  }

  @Test
  void whereThereIsNoPlanItTellsTheOneThatBreaksLimitsLeast() {
    int none = 0;
    int exact = 0;
    for (int seed = 0; seed < 80; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      if (ExhaustiveSearch.leastByMoves(problem)[problem.boxCount] == Double.POSITIVE_INFINITY) {
        none++;
        int[] closest = cooled(problem, -1, 20_000).closest();
        TrialPlan trial = new TrialPlan(problem, Integer.MAX_VALUE);
        trial.start(closest);
        assertArrayEquals(closest, trial.place, "every box where it may stand");
        double least = leastBroken(problem, trial, new int[problem.boxCount], 0);
        assertTrue(broken(closest, trial) >= least - CLOSE);
        exact += broken(closest, trial) < least + CLOSE ? 1 : 0;
      }
    }
    assertTrue(exact > 0.9 * none, exact + " of " + none);
    assertTrue(none > 20, "problems without a plan: " + none);
  }

  private static double broken(int[] place, TrialPlan trial) {
    trial.start(place);
    return trial.broken();
  }

  private static double leastBroken(StowProblem problem, TrialPlan trial, int[] place, int box) {
    if (box == place.length) {
      return broken(place, trial);
    }
    double least = Double.POSITIVE_INFINITY;
    for (int at = 0; at < problem.placeCount; at++) {
      if (problem.allowed[box][at]) {
        place[box] = at;
        least = Math.min(least, leastBroken(problem, trial, place, box + 1));
      }
    }
    return least;
  }

  @Test
  void takesOnlyOffersThatKeepAllLimitsAndAreBetter() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      int[] best = cooled(problem, -1, 6_000).best();
      Annealing plans = new Annealing(problem, 1);
      plans.offer(new int[0]);
      plans.offer(new int[problem.boxCount + 1]);
      assertEquals(0, plans.best().length);
      plans.offer(problem.now);
      boolean stays = problem.feasible(problem.now);
      assertEquals(stays ? problem.boxCount : 0, plans.best().length);
      if (best.length > 0 && problem.moves(best) > 1) {
        plans.offer(best);
        assertArrayEquals(stays ? problem.now : new int[0], plans.best(), "too many moves");
      }
      Annealing any = new Annealing(problem, -1);
      any.offer(best);
      any.offer(problem.now);
      assertArrayEquals(best, any.best(), "the worse one does not replace the better");
    }
  }

  @Test
  void ofEquallyGoodPlansThatWithFewerMovesWins() {
    long none = StowProblem.UNLIMITED;
    StowProblem problem =
        new StowProblem(
            new long[] {2_000_000, 3_000_000, 4_000_000},
            new long[] {1, 1, 1},
            new long[] {1_000_000, 1_000_000, 2_000_000},
            new long[] {0, 0, 0},
            new long[] {none, none, none},
            new long[] {none, none, none},
            new boolean[][] {{true, true, true}, {true, true, true}, {true, true, true}},
            new int[] {1, 0, 2},
            -none,
            none);
    Annealing plans = new Annealing(problem, -1);
    plans.run(new int[] {0, 1, 2}, 5_000, 0.5, 1);
    assertEquals(1, problem.moves(plans.best()));
    assertEquals(9, plans.bestMoment(), CLOSE);
  }

  @Test
  void withoutBoxesThereIsNothingToDo() {
    long[] no = {};
    StowProblem problem =
        new StowProblem(
            no,
            no,
            new long[] {5},
            new long[] {0},
            new long[] {0},
            new long[] {0},
            new boolean[0][],
            new int[0],
            -1,
            1);
    Annealing plans = new Annealing(problem, -1);
    plans.run(problem.now, 100, 0.5, 1);
    assertEquals(0, plans.bestMoment());
  }
}
