package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.api.Test;

/**
 * The quick bound against Commons Math's simplex method on the same problem with divisible boxes.
 */
class LinearBoundTest {
  /** Least moment with divisible boxes, kg m; infinite where there is none. */
  private static double simplex(StowProblem problem, boolean[][] allowed) {
    int m = problem.placeCount;
    int size = problem.boxCount * m;
    double[] cost = new double[size];
    double[] side = new double[size];
    List<LinearConstraint> rows = new ArrayList<>();
    for (int box = 0; box < problem.boxCount; box++) {
      double[] one = new double[size];
      double[] shut = new double[size];
      for (int at = 0; at < m; at++) {
        cost[box * m + at] = problem.weightMg[box] * problem.stationUm[at] * 1e-12;
        side[box * m + at] = problem.weightMg[box] * problem.offsetUm[at] * 1e-12;
        one[box * m + at] = 1;
        shut[box * m + at] = allowed[box][at] ? 0 : 1;
      }
      rows.add(new LinearConstraint(one, Relationship.EQ, 1));
      rows.add(new LinearConstraint(shut, Relationship.EQ, 0));
    }
    for (int at = 0; at < m; at++) {
      double[] load = new double[size];
      double[] volume = new double[size];
      for (int box = 0; box < problem.boxCount; box++) {
        load[box * m + at] = problem.weightMg[box] * 1e-6;
        volume[box * m + at] = problem.volumeMm3[box] * 1e-6;
      }
      if (problem.loadRoomMg[at] < StowProblem.UNLIMITED) {
        rows.add(new LinearConstraint(load, Relationship.LEQ, problem.loadRoomMg[at] * 1e-6));
      }
      rows.add(new LinearConstraint(volume, Relationship.LEQ, problem.volumeRoomMm3[at] * 1e-6));
    }
    rows.add(new LinearConstraint(side, Relationship.LEQ, problem.sideHighest * 1e-12));
    rows.add(new LinearConstraint(side, Relationship.GEQ, problem.sideLowest * 1e-12));
    try {
      return new SimplexSolver()
          .optimize(
              new MaxIter(100_000),
              new LinearObjectiveFunction(cost, 0),
              new LinearConstraintSet(rows),
              GoalType.MINIMIZE,
              new NonNegativeConstraint(true))
          .getValue();
    } catch (NoFeasibleSolutionException none) {
      return Double.POSITIVE_INFINITY;
    }
  }

  @Test
  void comesCloseToTheSimplexFromBelow() {
    int compared = 0;
    int reached = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double exact = simplex(problem, problem.allowed);
      if (exact == Double.POSITIVE_INFINITY) {
        continue;
      }
      double bound = new LinearBound(problem).ascend(problem.allowed, exact + 0.01, 2_000);
      assertTrue(bound <= exact + 1e-7, "seed " + seed + ": " + bound + " over " + exact);
      double short1 = (exact - bound) / new PlaceCosts(problem).spread();
      assertTrue(short1 < 0.015, "seed " + seed + " stays " + short1 + " of a usual box below");
      compared++;
      reached += short1 < 1e-4 ? 1 : 0;
    }
    assertTrue(compared > 40, "compared " + compared);
    assertTrue(reached > 0.85 * compared, "reached " + reached + " of " + compared);
  }

  /** At a box's linear price no place has more worth in it than its room costs. */
  @Test
  void itsPricesGiveThePricedPlacesAtLeastTheSameBound() {
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double exact = simplex(problem, problem.allowed);
      if (exact == Double.POSITIVE_INFINITY) {
        continue;
      }
      LinearBound linear = new LinearBound(problem);
      double bound = linear.ascend(problem.allowed, exact, 500);
      double[] prices = linear.boxPrices(problem.allowed);
      assertEquals(problem.boxCount + 2, prices.length);
      assertEquals(0, prices[problem.boxCount + 1], "no price of a move yet");
      DualBound dual = new DualBound(problem);
      dual.prices(prices);
      double priced = dual.evaluate(problem.allowed);
      assertTrue(priced >= bound - 1e-7, "seed " + seed + ": " + priced + " under " + bound);
    }
  }

  @Test
  void sharesOfVolumeAreThoseOfTheLimitThatBinds() {
    // Twice 4 kg and 4 l, room for one of them aft: by volume, by load, by neither.
    assertEquals(1, shareAft(StowProblem.UNLIMITED, 5_000_000), 1e-9);
    assertEquals(0, shareAft(5_000_000, StowProblem.UNLIMITED), 1e-9);
    assertEquals(0.5, shareAft(9_000_000, 9_000_000), 1e-9);
  }

  private static double shareAft(long loadRoom, long volumeRoom) {
    long none = StowProblem.UNLIMITED;
    StowProblem problem =
        new StowProblem(
            new long[] {4_000_000, 4_000_000},
            new long[] {4_000_000, 4_000_000},
            new long[] {0, 3_000_000},
            new long[] {0, 0},
            new long[] {loadRoom, none},
            new long[] {volumeRoom, none},
            new boolean[][] {{true, true}, {true, true}},
            new int[] {1, 1},
            -none,
            none);
    LinearBound linear = new LinearBound(problem);
    linear.ascend(problem.allowed, 12, 300);
    return linear.volumeShares()[0];
  }

  @Test
  void aBoxWithoutAPlaceLeavesNoPlan() {
    StowProblem problem = RandomProblems.of(1);
    boolean[][] allowed = RandomProblems.open(problem);
    Arrays.fill(allowed[0], false);
    assertEquals(Double.POSITIVE_INFINITY, new LinearBound(problem).ascend(allowed, 1e6, 500));
  }
}
