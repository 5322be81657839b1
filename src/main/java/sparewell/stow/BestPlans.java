package sparewell.stow;

import java.util.Arrays;

/** The best plans found so far, one for each number of moved boxes. */
final class BestPlans {
  private final StowProblem problem;

  /** By number of moved boxes: the best plan and its cost, kg m; infinite where there is none. */
  private final int[][] best;

  private final double[] bestCost;

  BestPlans(StowProblem problem) {
    this.problem = problem;
    best = new int[problem.boxCount() + 1][];
    bestCost = new double[problem.boxCount() + 1];
    Arrays.fill(bestCost, Double.POSITIVE_INFINITY);
  }

  /** Keeps a copy of the plan where it is within all limits and the best with so many moves. */
  void offer(int[] plan) {
    for (int box = 0; box < plan.length; box++) {
      if (plan[box] == problem.placeCount() || !problem.allowed(box, plan[box])) {
        return;
      }
    }
    int moves = problem.moves(plan);
    double cost = problem.cost(plan);
    if (cost < bestCost[moves] - 1e-10 && problem.feasible(plan)) {
      best[moves] = plan.clone();
      bestCost[moves] = cost;
    }
  }

  /** Number of moves of the best plan with at most that many, of equals the fewest; -1: none. */
  int bestMoves(int most) {
    int found = -1;
    for (int k = 0; k <= most; k++) {
      if (found < 0
          ? best[k] != null
          : bestCost[k] < bestCost[found] - StowSolver.tolerance(bestCost[found])) {
        found = k;
      }
    }
    return found;
  }

  /** Number of moves of the plan that costs least with a charge, kg m, on each; -1: no plan. */
  int worthwhile(double charge) {
    int found = -1;
    for (int k = 0; k < best.length; k++) {
      double better = found < 0 ? 1 : bestCost[found] - bestCost[k] - charge * (k - found);
      if (best[k] != null && better > StowSolver.tolerance(bestCost[k])) {
        found = k;
      }
    }
    return found;
  }

  /** Cost of the best plan with at most that many moves, kg m; infinite where there is none. */
  double cost(int most) {
    int moves = bestMoves(most);
    return moves < 0 ? Double.POSITIVE_INFINITY : bestCost[moves];
  }

  /** The best plan with at most that many moves; empty where there is none. */
  int[] plan(int most) {
    int moves = bestMoves(most);
    return moves < 0 ? new int[0] : best[moves].clone();
  }
}
