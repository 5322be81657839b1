package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bounds with each box in any number of places, against exhaustive search on small problems. */
class AssignmentRelaxationTest {
  private static final double CLOSE = 1e-7;

  @Test
  void whateverTheMultipliersNoPlanCostsLess() {
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      AssignmentRelaxation bound = new AssignmentRelaxation(problem);
      Random random = new Random(seed);
      for (int turn = 0; turn < 20; turn++) {
        double[] multipliers = random.doubles(problem.boxCount() + 2, -5, 30).toArray();
        multipliers[problem.boxCount() + 1] = Math.abs(multipliers[problem.boxCount() + 1]);
        bound.multipliers(multipliers);
        for (int moves = 0; moves < least.length; moves++) {
          assertTrue(bound.evaluate(RandomProblems.open(problem), moves) <= least[moves] + CLOSE);
        }
      }
    }
  }

  @Test
  void anAscentComesNearTheBestPlan() {
    double gaps = 0;
    int solved = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount()];
      double found =
          new AssignmentRelaxation(problem)
              .ascend(RandomProblems.open(problem), problem.boxCount(), least, 400, 1.8);
      assertTrue(found <= least + CLOSE);
      gaps += (least - found) / Math.abs(least);
      solved++;
    }
    assertTrue(gaps / solved < 0.05, "mean gap " + gaps / solved);
  }

  @Test
  void itsBoundIsNoLessThanThatOfTheLimitsItStartsFrom() {
    double gained = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      boolean[][] open = RandomProblems.open(problem);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount()];
      LimitRelaxation limits = new LimitRelaxation(problem);
      AssignmentRelaxation places = new AssignmentRelaxation(problem);
      double known = limits.ascend(open, problem.boxCount(), least, 500, 0.8);
      places.start(limits, open);
      double bound = places.evaluate(open, problem.boxCount());
      assertTrue(bound >= known - CLOSE, "seed " + seed);
      gained += (bound - known) / (least - known + CLOSE);
    }
    assertTrue(gained > 10, "of what is left to gain, in all " + gained);
  }

  /** A multiplier of 0 that would have to fall takes no part in the length of a step. */
  @Test
  void aLimitThatDoesNotBindSlowsNoAscent() {
    double gaps = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = StowCases.problem(7, 3, seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount()];
      boolean[][] open = RandomProblems.open(problem);
      double few = new AssignmentRelaxation(problem).ascend(open, 30, least, 20, 1.8);
      double many = new AssignmentRelaxation(problem).ascend(open, 7_000, least, 20, 1.8);
      assertEquals(few, many, CLOSE, "seed " + seed);
      gaps += (least - many) / Math.abs(least);
    }
    assertTrue(gaps / 100 < 0.1, "mean gap " + gaps / 100);
  }

  /** What a box costs in a place is what the bound is with that place alone open to it. */
  @Test
  void closesThePlacesWhoseBoundReachesTheTarget() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      Random random = new Random(seed);
      AssignmentRelaxation fixing = new AssignmentRelaxation(problem);
      AssignmentRelaxation forcing = new AssignmentRelaxation(problem);
      for (int turn = 0; turn < 8; turn++) {
        double[] multipliers = random.doubles(problem.boxCount() + 2, -1, 12).toArray();
        multipliers[problem.boxCount() + 1] = random.nextDouble();
        fixing.multipliers(multipliers);
        forcing.multipliers(multipliers);
        boolean[][] open = RandomProblems.open(problem);
        double target = fixing.evaluate(open, problem.boxCount()) + 10 * random.nextDouble();
        boolean[][] left = RandomProblems.open(problem);
        boolean any = fixing.fix(left, problem.boxCount(), target) >= 0;
        for (int box = 0; box < problem.boxCount() && any; box++) {
          if (RandomProblems.count(open[box]) > 1) {
            double[] forced = forced(forcing, open, box);
            int least = fixing.cheapest(open, box);
            for (int at = 0; at < forced.length; at++) {
              assertEquals(open[box][at] && forced[at] < target, left[box][at], "seed " + seed);
              assertTrue(forced[least] <= forced[at] + CLOSE, "seed " + seed);
            }
          }
        }
      }
    }
  }

  private static double[] forced(AssignmentRelaxation bound, boolean[][] open, int box) {
    boolean[] its = open[box];
    double[] forced = new double[its.length];
    for (int at = 0; at < its.length; at++) {
      open[box] = new boolean[its.length];
      open[box][at] = its[at];
      forced[at] = bound.evaluate(open, open.length);
    }
    open[box] = its;
    return forced;
  }

  /** The bound is concave: no other multipliers give more than its slope here promises. */
  @Test
  void theBoundLiesBelowItsTangents() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      Random random = new Random(seed);
      below(new AssignmentRelaxation(problem), problem.boxCount(), random);
      below(new LimitRelaxation(problem), 0, random);
    }
  }

  private static void below(LagrangianRelaxation bound, int equations, Random random) {
    boolean[][] open = RandomProblems.open(bound.problem);
    double[][] at = new double[12][];
    double[][] slope = new double[at.length][];
    double[] height = new double[at.length];
    int most = random.nextInt(bound.n + 1);
    for (int k = 0; k < at.length; k++) {
      at[k] = random.doubles(bound.multiplier.length, -3, 12).toArray();
      for (int rule = equations; rule < at[k].length; rule++) {
        at[k][rule] = rule == bound.ofSide ? random.nextInt(3) - 1 : Math.max(0, at[k][rule]);
      }
      bound.multipliers(at[k]);
      height[k] = bound.evaluate(open, most);
      slope[k] = bound.subgradient.clone();
    }
    for (int k = 0; k < at.length; k++) {
      for (int other = 0; other < at.length; other++) {
        double tangent = height[k];
        for (int rule = 0; rule < at[k].length; rule++) {
          tangent += slope[k][rule] * (at[other][rule] - at[k][rule]);
        }
        assertTrue(height[other] <= tangent + CLOSE * Math.max(1, Math.abs(tangent)));
      }
    }
  }

  @Test
  void aBoxWithoutAPlaceLeavesNoPlan() {
    StowProblem problem = RandomProblems.of(1);
    boolean[][] open = RandomProblems.open(problem);
    open[0] = new boolean[problem.placeCount()];
    AssignmentRelaxation bound = new AssignmentRelaxation(problem);
    assertEquals(Double.POSITIVE_INFINITY, bound.evaluate(open, problem.boxCount()));
    assertEquals(-1, bound.fix(RandomProblems.open(problem), problem.boxCount(), -1e9));
  }

  @Test
  void noPlaceOfABestPlanIsClosed() {
    int closed = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double least = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount()];
      if (least == Double.POSITIVE_INFINITY) {
        continue;
      }
      boolean[][] open = RandomProblems.open(problem);
      AssignmentRelaxation bound = new AssignmentRelaxation(problem);
      bound.ascend(open, problem.boxCount(), least, 200, 1.8);
      closed += bound.fix(open, problem.boxCount(), least + 1e-6);
      double left = ExhaustiveSearch.leastByMoves(RandomProblems.with(problem, open))[open.length];
      assertEquals(least, left, CLOSE);
    }
    assertTrue(closed > 100, "closed: " + closed);
  }
}
