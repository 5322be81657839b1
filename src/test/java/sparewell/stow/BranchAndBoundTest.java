package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.IntStream;
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
      StowProblem problem = StowCases.problem(18, 6, seed);
      StowSolver.Answer answer = new StowSolver(problem, Effort.standard(18)).best();
      assertTrue(answer.proven(), "case " + seed);
    }
  }

  /** Bounds, as prices, are kept from search to search; what is kept has to hold for each. */
  @Test
  void cutShortSearchesOfOneProblemKeepTheirBoundsAndTheyHold() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = moved(RandomProblems.of(seed), -6_000_000);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      double hair = 0.05 * new PlaceCosts(problem).spread();
      for (int[] order : orders(problem.boxCount)) {
        BranchAndBound search = new BranchAndBound(problem, CEILING);
        double ofAny = Double.NEGATIVE_INFINITY;
        double[] before = new double[least.length];
        Arrays.fill(before, Double.NEGATIVE_INFINITY);
        for (int k : order) {
          int moves = k < 0 ? problem.boxCount : k;
          double bound = search.search(k, new Annealing(problem, k), 0);
          String what = "seed " + seed + ", moves " + k + " of " + Arrays.toString(order);
          assertTrue(bound <= Math.min(CEILING, least[moves]) + CLOSE, what);
          // But for a hair: the bound of linear prices, now and then the better one, is not kept.
          assertTrue(bound >= before[moves] - hair, what);
          assertTrue(bound >= ofAny - hair, "what holds for any number, " + what);
          before[moves] = bound;
          ofAny = k < 0 ? bound : ofAny;
        }
      }
    }
  }

  private static int[][] orders(int boxes) {
    int[] upward = IntStream.rangeClosed(0, boxes).toArray();
    int[] downward = IntStream.rangeClosed(0, boxes).map(k -> boxes - k).toArray();
    return new int[][] {
      IntStream.concat(IntStream.of(-1), Arrays.stream(upward)).toArray(),
      IntStream.concat(Arrays.stream(upward), Arrays.stream(downward)).toArray(),
      IntStream.concat(Arrays.stream(downward), IntStream.of(-1, 1, 0)).toArray()
    };
  }

  /** The same boat with another zero of its stations. */
  private static StowProblem moved(StowProblem problem, long byUm) {
    ProblemChange change = new ProblemChange(problem);
    Arrays.setAll(change.stationUm, place -> problem.stationUm[place] + byUm);
    return change.made();
  }

  /** Where nothing hinders a box, the first bound closes the gap, whatever rounding left of it. */
  @Test
  void withoutLimitsTheBoundIsTheMomentItself() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed).without(true, true, true);
      for (long times : new long[] {1, 10_000}) {
        StowProblem heavy = heavier(problem, times);
        Annealing plans = new Annealing(heavy, -1);
        PlaceCosts costs = new PlaceCosts(heavy);
        plans.offer(IntStream.range(0, heavy.boxCount).map(costs::cheapest).toArray());
        double bound = new BranchAndBound(heavy, CEILING * times).search(-1, plans, 0);
        assertEquals(plans.bestMoment(), bound, 0, "seed " + seed);
      }
    }
  }

  private static StowProblem heavier(StowProblem problem, long times) {
    ProblemChange change = new ProblemChange(problem);
    Arrays.setAll(change.weightMg, box -> problem.weightMg[box] * times);
    return change.made();
  }

  /** What the heuristics are for: with worse ones all answers are right, but later. */
  @Test
  void provesSmallBoatsWithLittleWork() {
    int[] proven = new int[5];
    for (int seed = 1; seed <= 40; seed++) {
      StowProblem small = StowCases.problem(10, 4, seed);
      StowProblem problem = StowCases.problem(14, 5, seed);
      proven[0] += proves(small, new int[] {-1}, 20_000) ? 1 : 0;
      proven[4] += proves(moved(small, -90_000_000), new int[] {-1}, 20_000) ? 1 : 0;
      for (long work : new long[] {30_000, 60_000}) {
        proven[0] += proves(problem, new int[] {-1}, work) ? 1 : 0;
        proven[1] += proves(problem, new int[] {-1, 4}, work) ? 1 : 0;
        proven[2] += proves(problem, new int[] {4, 3}, work) ? 1 : 0;
        proven[3] += proves(problem, new int[] {3}, work) ? 1 : 0;
      }
    }
    assertTrue(proven[0] >= 56, "any number of moves, of 120: " + proven[0]);
    assertTrue(proven[1] >= 40, "4 moves after that, of 80: " + proven[1]);
    assertTrue(proven[2] >= 51, "3 moves after 4, of 80: " + proven[2]);
    assertTrue(proven[3] >= 51, "3 moves at once, of 80: " + proven[3]);
    assertTrue(proven[4] >= 22, "with another zero, of 40: " + proven[4]);
  }

  /** Sums over the boats of how far the bound before any branching stays below the best plan. */
  @Test
  void pricesOfOneSearchServeTheNext() {
    double[] below = new double[3];
    for (int seed = 1; seed <= 40; seed++) {
      StowProblem problem = StowCases.problem(10, 4, seed);
      double usual = new PlaceCosts(problem).spread();
      BranchAndBound exact = new BranchAndBound(problem, CEILING);
      double four = exact.search(4, new Annealing(problem, 4), 5_000_000);
      double three = exact.search(3, new Annealing(problem, 3), 5_000_000);
      if (three == CEILING) {
        continue;
      }
      below[0] += (four - root(problem, 30_000, -1, 4)) / usual;
      below[1] += (three - root(problem, 30_000, 4, 3)) / usual;
      below[2] += (three - root(problem, 30_000, -1, 4, 3)) / usual;
    }
    assertTrue(below[0] < 20.8, "usual boxes below the best, 4 moves after any: " + below[0]);
    assertTrue(below[1] < 26.5, "usual boxes below the best, 3 moves after 4: " + below[1]);
    assertTrue(below[2] < 28.1, "usual boxes below the best, 3 after 4 after any: " + below[2]);
  }

  /** The bound of the last of these searches before anything is explored. */
  private static double root(StowProblem problem, long workBefore, int... moves) {
    BranchAndBound search = new BranchAndBound(problem, CEILING);
    int last = moves.length - 1;
    for (int at = 0; at < last; at++) {
      search.search(moves[at], new Annealing(problem, moves[at]), workBefore);
    }
    return search.search(moves[last], new Annealing(problem, moves[last]), 0);
  }

  /** Whether the last of the searches is proven with that much work; the others have plenty. */
  private static boolean proves(StowProblem problem, int[] moves, long work) {
    BranchAndBound search = new BranchAndBound(problem, CEILING);
    int last = moves.length - 1;
    for (int at = 0; at < last; at++) {
      search.search(moves[at], new Annealing(problem, moves[at]), 1_000_000);
    }
    Annealing plans = new Annealing(problem, moves[last]);
    double bound = search.search(moves[last], plans, work);
    return bound >= Math.min(CEILING, plans.bestMoment()) - CLOSE;
  }

  @Test
  void cutShortItFindsPlansNearTheBest() {
    double[] above = new double[2];
    for (int seed = 1; seed <= 40; seed++) {
      StowProblem problem = StowCases.problem(14, 5, seed);
      Annealing known = new Annealing(problem, -1);
      double best = new BranchAndBound(problem, CEILING).search(-1, known, 5_000_000);
      for (int at = 0; at < above.length; at++) {
        Annealing plans = new Annealing(problem, -1);
        new BranchAndBound(problem, CEILING).search(-1, plans, at == 0 ? 20_000 : 40_000);
        double usual = new PlaceCosts(problem).spread();
        above[at] += Math.min(1, (plans.bestMoment() - best) / usual);
      }
    }
    assertTrue(above[0] < 40 * 0.176, "usual boxes above the best: " + above[0]);
    assertTrue(above[1] < 40 * 0.113, "usual boxes above the best: " + above[1]);
  }
}
