package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Exact search: depth-first over 'box i in place j or not', with {@link DualBound} as bound and to
 * strike out places. Work is counted, not timed, so that the same problem gives the same answer;
 * cut short it still gives a proven bound.
 */
final class BranchAndBound {
  private static final int LINEAR_STEPS = 800;
  private static final int ROOT_STEPS = 150;
  private static final int WARM_STEPS = 40;

  private final StowProblem problem;
  private final DualBound dual;
  private final double ceiling;

  /** Bounds found so far as straight lines over the number of moves: {value at 0, price of one}. */
  private final List<double[]> lines = new ArrayList<>();

  private double[] warmPrices = new double[0];
  private boolean warmForMoves;
  private Annealing plans;
  private long workLimit;
  private long nodes;
  private double tolerance;

  /**
   * For searches of one problem, one after the other; prices are taken on from each to the next.
   *
   * @param ceiling a value that no plan exceeds, for when none is known, kg m
   */
  BranchAndBound(StowProblem problem, double ceiling) {
    this.problem = problem;
    this.ceiling = ceiling;
    dual = new DualBound(problem);
  }

  /**
   * Searches within that much work.
   *
   * @param mostMoves most boxes that may move; negative for any number
   * @param known plans found so far; better ones are added
   * @return a proven lower bound on the moment, kg m: that of the best plan where it is proven
   *     best, {@code ceiling} where there is no plan at all
   */
  double search(int mostMoves, Annealing known, long work) {
    plans = known;
    nodes = 0;
    workLimit = dual.work() + work;
    tolerance = 1e-9 * Math.max(1, Math.abs(target()));
    boolean counted = mostMoves >= 0;
    int moves = counted ? mostMoves : problem.boxCount;
    double bound = known(moves);
    if (closes(bound)) {
      return target();
    }
    boolean[][] allowed = new boolean[problem.boxCount][];
    for (int i = 0; i < allowed.length; i++) {
      allowed[i] = problem.allowed[i].clone();
    }
    dual.mostMoves(mostMoves);
    int steps = ROOT_STEPS;
    if (warmPrices.length == 0) {
      LinearBound linear = new LinearBound(problem);
      bound = linear.ascend(allowed, target(), LINEAR_STEPS);
      if (closes(bound)) {
        return target();
      }
      dual.prices(linear.boxPrices(allowed));
      dual.mixes(linear.volumeShares());
    } else {
      dual.prices(warmPrices);
      steps = counted && !warmForMoves ? ROOT_STEPS : WARM_STEPS;
      warmForMoves |= counted;
    }
    double root = ascend(allowed, bound, steps, 1.0);
    warmPrices = dual.prices();
    lines.add(new double[] {root + dual.movePrice() * moves, dual.movePrice()});
    root = Math.max(bound, root);
    if (closes(root)) {
      return target();
    }
    return Math.min(target(), Math.max(root, explore(allowed, root, true)));
  }

  /** The best bound for that number of moves that the searches before give. */
  private double known(int moves) {
    double bound = Double.NEGATIVE_INFINITY;
    for (double[] line : lines) {
      bound = Math.max(bound, line[0] - line[1] * moves);
    }
    return bound;
  }

  /** What a plan must undercut to be of use. */
  private double target() {
    return Math.min(ceiling, plans.bestMoment());
  }

  /** Whether nothing of use can lie above that bound. */
  private boolean closes(double bound) {
    return bound >= target() - tolerance;
  }

  /** Raises the bound; the places are searched the more exactly the less is left to gain. */
  private double ascend(boolean[][] allowed, double bound, int steps, double steadiness) {
    dual.knapsackTolerance(Math.max(0, target() - bound) * 0.002);
    return dual.ascend(allowed, target(), steps, steadiness);
  }

  private double explore(boolean[][] allowed, double parent, boolean top) {
    nodes++;
    double children = Double.POSITIVE_INFINITY;
    double bound = parent;
    int steps = top ? 100 : 30;
    while (true) {
      if (dual.work() >= workLimit) {
        return Math.min(children, bound);
      }
      bound = Math.max(bound, ascend(allowed, bound, steps, 0.7));
      if (closes(bound)) {
        return Math.min(children, target());
      }
      int struck = dual.strikeOut(allowed, target() - tolerance);
      if (struck < 0) {
        return Math.min(children, target());
      }
      steps = struck > 0 ? 20 : 10;
      int[] plan = new int[problem.boxCount];
      int branch = pick(allowed, plan);
      if (top || nodes % 8 == 0) {
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
      children = Math.min(children, explore(child, bound, false));
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
      double share = -1;
      int open = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < problem.placeCount; j++) {
        if (allowed[i][j]) {
          open++;
          low = Math.min(low, problem.momentKgM(i, j));
          high = Math.max(high, problem.momentKgM(i, j));
          if (dual.share(i, j) > share) {
            share = dual.share(i, j);
            likeliest = j;
          }
        }
      }
      plan[i] = likeliest;
      if (open > 1) {
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
