package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Search for the best plan with at most so many moves. {@link LimitRelaxation} gives multipliers of
 * the limits; {@link Annealing} finds good plans by them; {@link AssignmentRelaxation} bounds the
 * cost from below. Branch and bound over 'box i in place j or not' then closes places by
 * reduced-cost fixing and looks at all plans left where these are few. Multipliers and bounds are
 * taken on from one number of moves to the next. Work is counted, not timed, so that the same
 * problem gives the same answer; cut short it still gives a proven bound.
 */
final class StowSearch {
  /** Steps of the multipliers of the limits: from zero, from good ones on, at a node. */
  private static final int LIMIT_STEPS = 500;

  private static final int MORE_LIMIT_STEPS = 100;
  private static final int NODE_LIMIT_STEPS = 20;

  /** Steps of the bound at a node, at the first and once places were closed. */
  private static final int NODE_STEPS = 15;

  private static final int MORE_NODE_STEPS = 5;

  /** Most branches looked at to finish a node at once. */
  private static final long FINISH = 5_000;

  private final StowProblem problem;
  private final BestPlans plans;
  private final double ceiling;
  private final LimitRelaxation limits;
  private final AssignmentRelaxation dual;
  private final Repacking repacking;
  final Annealing annealing;

  /** Bounds found so far as straight lines over the number of moves: {value at 0, slope down}. */
  private final List<double[]> lines = new ArrayList<>();

  private int mostMoves;
  private long workLimit;
  private double tolerance;

  /**
   * @param plans found so far and to be added to
   * @param ceiling a value that no plan exceeds, for when none is known, kg m
   */
  StowSearch(StowProblem problem, BestPlans plans, double ceiling) {
    this.problem = problem;
    this.plans = plans;
    this.ceiling = ceiling;
    limits = new LimitRelaxation(problem);
    dual = new AssignmentRelaxation(problem);
    repacking = new Repacking(problem);
    annealing = new Annealing(problem, plans, repacking);
  }

  /** Improves the multipliers of the limits for that many moves, for annealing. */
  void price(int most) {
    mostMoves = most;
    limits.ascend(open(), most, target(), lines.isEmpty() ? LIMIT_STEPS : MORE_LIMIT_STEPS, 0.8);
    repacking.use(limits);
  }

  /**
   * Bounds and branches within that much work, from the multipliers and bounds found so far.
   *
   * @param most most boxes that may move
   * @param known a bound known, kg m
   * @param steps of the bound before it branches
   * @param exact work of branch and bound
   * @return a proven lower bound on the cost, kg m: that of the best plan where it is proven best,
   *     {@code ceiling} where there is no plan at all
   */
  double search(int most, double known, int steps, long exact) {
    mostMoves = most;
    tolerance = 1e-9 * Math.max(1, Math.abs(target()));
    double bound = known;
    for (double[] line : lines) {
      bound = Math.max(bound, line[0] - line[1] * most);
    }
    if (closes(bound)) {
      return target();
    }
    boolean[][] open = open();
    price(most);
    // with all moves allowed a move has no multiplier, so that the first row starts afresh too
    if (lines.isEmpty() || most < problem.boxCount() && dual.perMove() == 0) {
      dual.start(limits, open);
    }
    double root = dual.ascend(open, most, target(), steps, 1.0);
    lines.add(new double[] {root + dual.perMove() * most, dual.perMove()});
    double[] multipliers = dual.multipliers();
    double[] limitMultipliers = limits.multipliers();
    bound = Math.max(bound, root);
    workLimit = work() + exact;
    double found = explore(open, bound);
    dual.multipliers(multipliers);
    limits.multipliers(limitMultipliers); // those of a node draw every cooling to the same plan
    repacking.use(limits);
    return Math.min(target(), Math.max(bound, found));
  }

  private boolean[][] open() {
    boolean[][] open = new boolean[problem.boxCount()][problem.placeCount()];
    for (int i = 0; i < open.length; i++) {
      for (int j = 0; j < open[i].length; j++) {
        open[i][j] =
            problem.allowed(i, j)
                && problem.weightMg()[i] <= problem.loadRoomMg()[j]
                && problem.volumeMm3()[i] <= problem.volumeRoomMm3()[j];
      }
    }
    return open;
  }

  private long work() {
    return limits.work() + dual.work() + repacking.work();
  }

  /** Cost that a plan must undercut to be of use, kg m. */
  private double target() {
    return Math.min(ceiling, plans.cost(mostMoves));
  }

  /** True if nothing of use can lie above that bound. */
  private boolean closes(double bound) {
    return bound >= target() - tolerance;
  }

  /**
   * Branch and bound: a bound on all plans with those places open, at least {@code parent}. The
   * branch in which a box stands in its cheapest place is looked at in full, then that place is
   * closed to it and the loop goes on.
   */
  private double explore(boolean[][] open, double parent) {
    double children = Double.POSITIVE_INFINITY;
    double bound = parent;
    int steps = NODE_STEPS;
    while (work() < workLimit) {
      bound = Math.max(bound, dual.ascend(open, mostMoves, target(), steps, 0.7));
      if (closes(bound) || dual.fix(open, mostMoves, target() - tolerance) < 0 || finish(open)) {
        return Math.min(children, target());
      }
      int box = mostAtStake(open);
      int place = dual.cheapest(open, box);
      double[] multipliers = dual.multipliers();
      boolean[][] child = Arrays.stream(open).map(boolean[]::clone).toArray(boolean[][]::new);
      Arrays.fill(child[box], false);
      child[box][place] = true;
      children = Math.min(children, explore(child, bound));
      if (children <= bound) {
        return children;
      }
      open[box][place] = false;
      dual.multipliers(multipliers);
      steps = MORE_NODE_STEPS;
    }
    return Math.min(children, bound);
  }

  /** Looks at all plans left, if they are few: whether none of use is left. */
  private boolean finish(boolean[][] open) {
    limits.ascend(open, mostMoves, target(), NODE_LIMIT_STEPS, 0.3);
    repacking.use(limits);
    int[] plan = new int[problem.boxCount()];
    long limit = FINISH + 2L * plan.length; // enough for a single plan
    boolean all = repacking.complete(open, mostMoves, target() - tolerance, plan, limit);
    if (repacking.found()) {
      plans.offer(plan);
    }
    return all;
  }

  /** The box whose open places differ most in cost. */
  private int mostAtStake(boolean[][] open) {
    int found = -1;
    double most = -1;
    for (int i = 0; i < problem.boxCount(); i++) {
      int count = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < problem.placeCount(); j++) {
        if (open[i][j]) {
          count++;
          low = Math.min(low, problem.cost()[i][j]);
          high = Math.max(high, problem.cost()[i][j]);
        }
      }
      if (count > 1 && high - low > most) {
        most = high - low;
        found = i;
      }
    }
    return found;
  }
}
