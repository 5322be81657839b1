package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
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

  @Test
  void drawsAreThoseOfXorshift() {
    // The first numbers after 1, worked out apart in whole numbers of any size.
    assertEquals(1_082_269_761L, Annealing.next(1));
    assertEquals(1_152_992_998_833_853_505L, Annealing.next(1_082_269_761L));
    assertEquals(
        Long.parseUnsignedLong("11177516664432764457"), Annealing.next(1_152_992_998_833_853_505L));
    assertEquals(
        Long.parseUnsignedLong("17678023832001937445"),
        Annealing.next(Long.parseUnsignedLong("11177516664432764457")));
  }

  /** Boxes that weigh 1 kg each, in places 1 m apart of which the last is aftmost; no limits. */
  private static StowProblem alike(int places, int... now) {
    long none = StowProblem.UNLIMITED;
    long[] room = new long[places];
    Arrays.fill(room, none);
    long[] weight = new long[now.length];
    Arrays.fill(weight, 1_000_000);
    long[] station = new long[places];
    Arrays.setAll(station, at -> (places - at) * 1_000_000L);
    boolean[][] allowed = new boolean[now.length][places];
    for (boolean[] row : allowed) {
      Arrays.fill(row, true);
    }
    return new StowProblem(
        weight, weight, station, new long[places], room, room, allowed, now, -none, none);
  }

  /** The first step leads from one plan to that better one with about that chance. */
  private static void leads(
      StowProblem problem, int mostMoves, double chance, int[] from, int... to) {
    int seeds = 20_000;
    int times = 0;
    for (int seed = 1; seed <= seeds; seed++) {
      Annealing plans = new Annealing(problem, mostMoves);
      plans.run(from, 1, 0.5, seed);
      times += Arrays.equals(plans.best(), to) ? 1 : 0;
    }
    assertEquals(seeds * chance, times, 2.5 * Math.sqrt(seeds * chance));
  }

  /** Of 256 proposals 12 send a box home and 78 to any of its places. */
  @Test
  void aBoxGoesHomeOrAnywhere() {
    StowProblem away = alike(2, 1, 1, 1, 1);
    leads(away, -1, (12 + 78 / 2.0) / 256 / 4, new int[] {1, 1, 0, 1}, 1, 1, 1, 1);
    StowProblem home = alike(2, 0, 0, 0, 0);
    leads(home, -1, 78 / 2.0 / 256 / 4, new int[] {0, 0, 0, 0}, 0, 0, 1, 0);
  }

  /** Of 256 proposals 128 swap two boxes, and so do those that rotate one of them with itself. */
  @Test
  void twoBoxesSwap() {
    leads(alike(2, 1, 0, 0, 0), -1, (128 + 38 / 4.0) / 256 / 8, new int[] {0, 1, 0, 0}, 1, 0, 0, 0);
  }

  /** Of 256 proposals 38 rotate three boxes, each of which may be the first. */
  @Test
  void threeBoxesRotate() {
    leads(alike(3, 1, 2, 0, 0), -1, 38.0 / 256 * 3 / 64, new int[] {0, 1, 2, 0}, 1, 2, 0, 0);
  }

  /** Where no more may move, every other proposal is about a box that has moved. */
  @Test
  void whereMovesAreScarceThoseWhoMovedMoveOn() {
    StowProblem problem = alike(3, 0, 0, 0, 0, 0, 0);
    double drawn = 0.5 * (1 + 1 / 6.0);
    leads(problem, 1, 78 / 256.0 / 3 * drawn, new int[] {0, 1, 0, 0, 0, 0}, 0, 2, 0, 0, 0, 0);
    double oneOfTwo = 0.5 * (1 / 2.0 + 1 / 6.0);
    leads(problem, 2, 78 / 256.0 / 3 * oneOfTwo, new int[] {0, 1, 1, 0, 0, 0}, 0, 1, 2, 0, 0, 0);
    leads(problem, 3, 78 / 256.0 / 3 / 6, new int[] {0, 1, 1, 0, 0, 0}, 0, 1, 2, 0, 0, 0);
  }

  @Test
  void whereMovesAreScarceOneGoesHomeAsAnotherSetsOut() {
    StowProblem problem = alike(3, 0, 0, 0, 0, 0, 0);
    double drawn = 0.5 / 6;
    leads(problem, 1, 78 / 256.0 / 3 * drawn, new int[] {0, 1, 0, 0, 0, 0}, 0, 0, 0, 2, 0, 0);
    leads(problem, 2, 78 / 256.0 / 3 * drawn / 2, new int[] {0, 1, 1, 0, 0, 0}, 0, 1, 0, 2, 0, 0);
  }

  @Test
  void withoutStepsAPlanIsOnlyTakenUp() {
    StowProblem problem = alike(2, 0, 0);
    for (int seed = 0; seed < 100; seed++) {
      Annealing plans = new Annealing(problem, -1);
      plans.run(problem.now, 0, 0.5, seed);
      assertArrayEquals(problem.now, plans.best());
    }
  }

  @Test
  void ofEqualsTheFirstStays() {
    StowProblem problem = alike(2, 0, 0);
    Annealing plans = new Annealing(problem, -1);
    plans.offer(new int[] {1, 0});
    plans.offer(new int[] {0, 1});
    assertArrayEquals(new int[] {1, 0}, plans.best());
    Arrays.fill(problem.loadRoomMg, 1_500_000);
    Annealing tight = new Annealing(problem, -1);
    tight.run(new int[] {1, 1}, 0, 0.5, 1);
    tight.run(new int[] {0, 0}, 0, 0.5, 1);
    assertArrayEquals(new int[] {1, 1}, tight.closest());
  }

  /** How good plans are after few steps: what the temperatures and prices are for. */
  @Test
  void fewStepsLeadNearTheBestPlan() {
    double[] above = new double[8];
    int runs = 0;
    for (int seed = 1; seed <= 12; seed++) {
      StowProblem problem = StowCases.problem(14, 5, seed);
      double range = new PlaceCosts(problem).spread();
      for (int counted = 0; counted < 2; counted++) {
        int most = counted == 0 ? -1 : 5;
        Annealing known = new Annealing(problem, most);
        double best = new BranchAndBound(problem, 1e4).search(most, known, 5_000_000);
        assertTrue(best < 1e4, "a plan with 5 moves, case " + seed);
        for (int run = 1; run <= 15; run++) {
          for (int kind = 0; kind < 4; kind++) {
            Annealing plans = new Annealing(problem, most);
            plans.run(problem.now, kind % 2 == 0 ? 600 : 4_000, kind < 2 ? 0.5 : 0.1, run);
            above[4 * counted + kind] += Math.min(1, (plans.bestMoment() - best) / range);
          }
          runs += counted;
        }
      }
    }
    double[] usual = {0.264, 0.102, 0.280, 0.137, 0.305, 0.092, 0.303, 0.152};
    for (int kind = 0; kind < above.length; kind++) {
      double mean = above[kind] / runs;
      assertTrue(mean < usual[kind], "usual boxes above the best, kind " + kind + ": " + mean);
    }
  }
}
