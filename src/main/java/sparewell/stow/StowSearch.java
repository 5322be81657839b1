package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Exact search: depth-first over 'box i in place j or not', with {@link PriceBound} as bound and to
 * strike out places. Prices and bounds are taken on from one number of moves to the next. Work is
 * counted, not timed, so that the same problem gives the same answer; cut short it still gives a
 * proven bound.
 */
final class StowSearch {
  private static final int ROOT_STEPS = 600;
  private static final int WARM_STEPS = 60;

  private final StowProblem problem;
  private final Plans plans;
  private final double ceiling;
  private final PriceBound dual;

  /** Every box in its cheapest place, kg m. */
  private final double least;

  /** Bounds found so far as straight lines over the number of moves: {value at 0, price of one}. */
  private final List<double[]> lines = new ArrayList<>();

  private int mostMoves;
  private long workLimit;
  private long nodes;
  private double tolerance;

  /**
   * @param plans found so far and to be added to
   * @param ceiling a value that no plan exceeds, for when none is known, kg m
   */
  StowSearch(StowProblem problem, Plans plans, double ceiling) {
    this.problem = problem;
    this.plans = plans;
    this.ceiling = ceiling;
    dual = new PriceBound(problem);
    least =
        Arrays.stream(problem.cost).mapToDouble(cost -> Arrays.stream(cost).min().orElse(0)).sum();
  }

  /**
   * Searches within that much work.
   *
   * @param most most boxes that may move
   * @return a proven lower bound on the cost, kg m: that of the best plan where it is proven best,
   *     {@code ceiling} where there is no plan at all
   */
  double search(int most, long work) {
    mostMoves = most;
    nodes = 0;
    workLimit = dual.work() + work;
    tolerance = 1e-9 * Math.max(1, Math.abs(target()));
    double bound = least;
    for (double[] line : lines) {
      bound = Math.max(bound, line[0] - line[1] * most);
    }
    if (closes(bound)) {
      return target();
    }
    boolean[][] open = new boolean[problem.boxCount][problem.placeCount];
    for (int i = 0; i < open.length; i++) {
      for (int j = 0; j < open[i].length; j++) {
        open[i][j] = problem.allowed(i, j);
      }
    }
    boolean first = lines.isEmpty() || most < problem.boxCount && dual.movePrice() == 0;
    int steps = first ? ROOT_STEPS : WARM_STEPS;
    double root = dual.ascend(open, most, bound, target(), steps, first ? 1.8 : 1.0);
    lines.add(new double[] {root + dual.movePrice() * most, dual.movePrice()});
    double[] prices = dual.prices();
    bound = Math.max(bound, root);
    double found = closes(bound) ? target() : explore(open, bound, true);
    dual.prices(prices);
    return Math.min(target(), Math.max(bound, found));
  }

  /** What a plan must undercut to be of use. */
  private double target() {
    return Math.min(ceiling, plans.cost(mostMoves));
  }

  /** Whether nothing of use can lie above that bound. */
  private boolean closes(double bound) {
    return bound >= target() - tolerance;
  }

  private double explore(boolean[][] open, double parent, boolean top) {
    nodes++;
    double children = Double.POSITIVE_INFINITY;
    double bound = parent;
    int steps = top ? 100 : 30;
    while (true) {
      if (dual.work() >= workLimit) {
        return Math.min(children, bound);
      }
      bound = Math.max(bound, dual.ascend(open, mostMoves, bound, target(), steps, 0.7));
      if (closes(bound)) {
        return Math.min(children, target());
      }
      int struck = dual.strikeOut(open, mostMoves, target() - tolerance);
      if (struck < 0) {
        return Math.min(children, target());
      }
      steps = struck > 0 ? 20 : 10;
      int[] plan = new int[problem.boxCount];
      int branch = pick(open, plan);
      if (branch < 0) {
        plans.offer(plan);
        return Math.min(children, target());
      }
      if (top || nodes % 2 == 0) {
        plans.anneal(plan, mostMoves, 500L * problem.boxCount, 0.05, nodes);
      }
      int at = plan[branch];
      double[] prices = dual.prices();
      boolean[][] child = new boolean[open.length][];
      for (int i = 0; i < child.length; i++) {
        child[i] = open[i].clone();
      }
      Arrays.fill(child[branch], false);
      child[branch][at] = true;
      children = Math.min(children, explore(child, bound, false));
      open[branch][at] = false;
      dual.prices(prices);
      if (children <= bound) {
        return children;
      }
    }
  }

  /** The box to branch on, -1 where all are settled; fills the likeliest place of every box. */
  private int pick(boolean[][] open, int[] plan) {
    int branch = -1;
    double most = -1;
    for (int i = 0; i < problem.boxCount; i++) {
      double share = -1;
      int count = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < problem.placeCount; j++) {
        if (open[i][j]) {
          count++;
          low = Math.min(low, problem.cost[i][j]);
          high = Math.max(high, problem.cost[i][j]);
          if (dual.share(i, j) > share) {
            share = dual.share(i, j);
            plan[i] = j;
          }
        }
      }
      double score = (high - low + 1e-6) * (0.1 + Math.min(share, 1 - share));
      if (count > 1 && score > most) {
        most = score;
        branch = i;
      }
    }
    return branch;
  }
}
