package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Search for the best plan with at most so many moves: a bound by {@link LagrangianBound}, plans by
 * {@link Annealing} with its multipliers, then an exact search, depth-first over 'box i in place j
 * or not', that closes places by their reduced costs and looks at all plans left where these are
 * few. Multipliers and bounds are taken on from one number of moves to the next. Work is counted,
 * not timed, so that the same problem gives the same answer; cut short it still gives a proven
 * bound.
 */
final class StowSearch {
  /** Steps of the bound: the first two times, and once its multipliers are good. */
  private static final int ROOT_STEPS = 400;

  private static final int WARM_STEPS = 60;

  /** Temperature at the start of a cooling, as a share of what a place usually changes. */
  private static final double HOT = 0.2;

  /** Branches that a cooling looks at, at most. */
  private static final long COOLING = 2_000_000;

  /** Most branches looked at to finish at once, before the annealing and at a node. */
  private static final long FINISH_ROOT = 40_000;

  private static final long FINISH = 5_000;

  private final StowProblem problem;
  private final BestPlans plans;
  private final double ceiling;
  private final LagrangianBound dual;
  private final Repacking repacking;
  private final Annealing annealing;

  /** Every box in its cheapest place, kg m. */
  private final double least;

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
    dual = new LagrangianBound(problem);
    repacking = new Repacking(problem);
    annealing = new Annealing(problem, plans, repacking);
    least =
        Arrays.stream(problem.cost).mapToDouble(cost -> Arrays.stream(cost).min().orElse(0)).sum();
  }

  /** The plan that comes closest to keeping every limit, where none does. */
  int[] closest() {
    return annealing.closest();
  }

  /**
   * Anneals with the multipliers in force: from the present stow, then from the best plan at half
   * the temperature, and so on in turn.
   *
   * @param most most boxes that may move
   * @param work branches looked at in all
   * @param seed of the proposals
   */
  void anneal(int most, long work, long seed) {
    long rounds = Math.max(1, work / 2 / COOLING);
    for (long round = 0; round < rounds; round++) {
      long its = work / 2 / rounds;
      annealing.anneal(new int[0], most, its, HOT, 1_000 * seed + round);
      annealing.anneal(plans.plan(most), most, its, HOT / 2, 1_000 * seed + round);
    }
  }

  /**
   * Searches within that much work.
   *
   * @param most most boxes that may move
   * @param cooling branches that the annealing looks at
   * @param exact work of the exact search
   * @param seed of the annealing
   * @return a proven lower bound on the cost, kg m: that of the best plan where it is proven best,
   *     {@code ceiling} where there is no plan at all
   */
  double search(int most, long cooling, long exact, long seed) {
    mostMoves = most;
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
    boolean first = lines.size() < 2 || most < problem.boxCount && dual.moveMultiplier() == 0;
    int steps = first ? ROOT_STEPS : WARM_STEPS;
    double root = dual.ascend(open, most, bound, target(), steps, first ? 1.8 : 1.0);
    lines.add(new double[] {root + dual.moveMultiplier() * most, dual.moveMultiplier()});
    double[] multipliers = dual.multipliers();
    bound = Math.max(bound, root);
    double found = target();
    if (!closes(bound) && !finish(open, Math.min(FINISH_ROOT, exact))) {
      anneal(most, cooling, seed);
      workLimit = work() + exact;
      found = closes(bound) ? target() : explore(open, bound, true);
    }
    found = Math.min(found, target());
    dual.multipliers(multipliers);
    return Math.min(target(), Math.max(bound, found));
  }

  private void takeUp() {
    repacking.multipliers(dual.roomMultipliers(), dual.sideMultiplier(), dual.moveMultiplier());
  }

  private long work() {
    return dual.work() + repacking.work();
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
    double children = Double.POSITIVE_INFINITY;
    double bound = parent;
    int steps = top ? 100 : 30;
    while (true) {
      if (work() >= workLimit) {
        return Math.min(children, bound);
      }
      bound = Math.max(bound, dual.ascend(open, mostMoves, bound, target(), steps, 0.7));
      if (closes(bound)) {
        return Math.min(children, target());
      }
      int closed = dual.fix(open, mostMoves, target() - tolerance);
      if (closed < 0 || finish(open, FINISH)) {
        return Math.min(children, target());
      }
      steps = closed > 0 ? 20 : 10;
      int branch = pick(open);
      int at = likeliest(open, branch);
      double[] multipliers = dual.multipliers();
      boolean[][] child = new boolean[open.length][];
      for (int i = 0; i < child.length; i++) {
        child[i] = open[i].clone();
      }
      Arrays.fill(child[branch], false);
      child[branch][at] = true;
      children = Math.min(children, explore(child, bound, false));
      open[branch][at] = false;
      dual.multipliers(multipliers);
      if (children <= bound) {
        return children;
      }
    }
  }

  /** Looks at all plans left, if they are few: whether none of use is left. */
  private boolean finish(boolean[][] open, long limit) {
    takeUp();
    int[] plan = new int[problem.boxCount];
    boolean all = repacking.complete(open, mostMoves, target() - tolerance, plan, limit);
    if (repacking.found()) {
      plans.offer(plan);
    }
    return all;
  }

  /** The box to branch on: the places took it now and again, and its place changes much. */
  private int pick(boolean[][] open) {
    int branch = -1;
    double most = -1;
    for (int i = 0; i < problem.boxCount; i++) {
      double share = dual.share(i, likeliest(open, i));
      int count = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < problem.placeCount; j++) {
        if (open[i][j]) {
          count++;
          low = Math.min(low, problem.cost[i][j]);
          high = Math.max(high, problem.cost[i][j]);
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

  /** The open place that took the box most often of late. */
  private int likeliest(boolean[][] open, int box) {
    int found = -1;
    for (int j = 0; j < problem.placeCount; j++) {
      if (open[box][j] && (found < 0 || dual.share(box, j) > dual.share(box, found))) {
        found = j;
      }
    }
    return found;
  }
}
