package sparewell.stow;

import java.util.Arrays;

/**
 * Exact search: depth-first over 'box i in place j or not', with {@link DualBound} as bound and to
 * strike out places. Work is counted, not timed, so that the same problem gives the same answer;
 * cut short it still gives a proven bound.
 */
final class BranchAndBound {
  private final StowProblem problem;
  private final DualBound dual;
  private final Annealing plans;
  private final int mostMoves;
  private long workLimit;
  private long nodes;
  private double tolerance;
  private double ceiling;

  BranchAndBound(StowProblem problem, int mostMoves, Annealing plans) {
    this.problem = problem;
    this.mostMoves = mostMoves;
    this.plans = plans;
    dual = new DualBound(problem, mostMoves);
  }

  long nodes() {
    return nodes;
  }

  /**
   * Searches within that much work.
   *
   * @param ceiling a value that no plan exceeds, for when none is known
   * @return a proven lower bound on the moment, kg m: that of the best plan where it is proven
   *     best, {@code ceiling} where there is no plan at all
   */
  double search(double ceiling, long work) {
    workLimit = dual.work() + work;
    boolean[][] allowed = new boolean[problem.boxCount][];
    for (int i = 0; i < allowed.length; i++) {
      allowed[i] = problem.allowed[i].clone();
    }
    this.ceiling = ceiling;
    tolerance = 1e-9 * Math.max(1, Math.abs(target()));
    LinearBound linear = new LinearBound(problem, mostMoves);
    double bound = linear.ascend(allowed, target(), 2000);
    if (bound >= target() - tolerance) {
      return target();
    }
    dual.prices(linear.boxPrices(allowed));
    dual.mixes(linear.volumeShares());
    dual.knapsackTolerance(Math.max(0, target() - bound) * 0.002);
    double root = Math.max(bound, dual.ascend(allowed, target(), 200, 1.0));
    if (root >= target() - tolerance) {
      return target();
    }
    return Math.min(target(), Math.max(root, explore(allowed, root, 0)));
  }

  /** What a plan must undercut to be of use. */
  private double target() {
    return Math.min(ceiling, plans.bestMoment());
  }

  private double explore(boolean[][] allowed, double parent, int depth) {
    nodes++;
    double children = Double.POSITIVE_INFINITY;
    double bound = parent;
    int steps = depth == 0 ? 100 : 30;
    while (true) {
      if (dual.work() >= workLimit) {
        return Math.min(children, bound);
      }
      dual.knapsackTolerance(Math.max(0, target() - bound) * 0.002);
      double here = dual.ascend(allowed, target(), steps, 0.7);
      bound = Math.max(bound, here);
      if (bound >= target() - tolerance) {
        return Math.min(children, target());
      }
      int struck = dual.strikeOut(allowed, dual.evaluate(allowed), target() - tolerance);
      if (struck < 0) {
        return Math.min(children, target());
      }
      steps = struck > 0 ? 20 : 10;
      int[] plan = new int[problem.boxCount];
      int branch = pick(allowed, plan);
      if (depth == 0 || nodes % 8 == 0) {
        plans.run(plan, 500L * problem.boxCount, 0.05, nodes);
      }
      if (branch < 0) {
        plans.offer(plan);
        return Math.min(children, target());
      }
      int at = plan[branch];
      double[] prices = dual.prices();
      boolean[][] child = new boolean[allowed.length][];
      for (int i = 0; i < child.length; i++) {
        child[i] = allowed[i].clone();
      }
      Arrays.fill(child[branch], false);
      child[branch][at] = true;
      children = Math.min(children, explore(child, bound, depth + 1));
      allowed[branch][at] = false;
      dual.prices(prices);
      if (children <= bound) {
        return children;
      }
    }
  }

  /** The box to branch on, -1 where all are settled; fills the likeliest place of every box. */
  private int pick(boolean[][] allowed, int[] plan) {
    int branch = -1;
    double most = -1;
    for (int i = 0; i < problem.boxCount; i++) {
      int likeliest = -1;
      int open = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < problem.placeCount; j++) {
        if (allowed[i][j]) {
          open++;
          low = Math.min(low, dual.cost[i][j]);
          high = Math.max(high, dual.cost[i][j]);
          if (likeliest < 0 || dual.average[i][j] > dual.average[i][likeliest]) {
            likeliest = j;
          }
        }
      }
      plan[i] = likeliest;
      if (open > 1) {
        double share = Math.min(1, dual.average[i][likeliest]);
        double score = (high - low + 1e-6) * (0.1 + Math.min(share, 1 - share));
        if (score > most) {
          most = score;
          branch = i;
        }
      }
    }
    return branch;
  }
}
