package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Solves a stowing problem: the best plan, and the best plans with few moves. */
final class StowSolver {
  /** Most rows after the first that the curve has. */
  static final int MOST_ROWS = 15;

  /** Share of the gain that is not searched for: it shows in no figure of the plan. */
  private static final double LITTLE = 0.004;

  /** Steps of the bound from the multipliers of the limits, in the second stage, from then on. */
  private static final int BOUND_STEPS = 80;

  private static final int LONG_BOUND_STEPS = 200;
  private static final int MORE_BOUND_STEPS = 60;

  /** Seed of the first slow cooling; single boats end 0.2 % apart by it. */
  private static final int FIRST_SEED = 32;

  private final StowProblem problem;
  private final Effort effort;
  private final double ceiling;
  private final BestPlans plans;
  private StowSearch search;

  StowSolver(StowProblem problem, Effort effort) {
    this.problem = problem;
    this.effort = effort;
    ceiling = ceiling(problem);
    plans = new BestPlans(problem);
    search = new StowSearch(problem, plans, ceiling);
  }

  /**
   * A plan with what is proven about it.
   *
   * @param places place of each box; empty where no plan was found
   * @param cost its cost, kg m
   * @param bound no plan (with so few moves) costs less, kg m
   */
  record Answer(List<Integer> places, double cost, double bound) {
    boolean found() {
      return cost < Double.POSITIVE_INFINITY;
    }

    /** True if it is proven best, or proven that there is none. */
    boolean proven() {
      return bound == cost;
    }

    int[] array() {
      return places.stream().mapToInt(Integer::intValue).toArray();
    }
  }

  /**
   * Answers for the best plan and for each number of moves.
   *
   * @param best best plan with any number of moves
   * @param rows row k: best plan with at most k moves; none where there is no best plan
   */
  record Curve(Answer best, List<Answer> rows) {}

  /** Values closer than this count as the same. */
  static double tolerance(double cost) {
    return 1e-8 * Math.max(1, Math.abs(cost));
  }

  private static double ceiling(StowProblem problem) {
    double sum = 1;
    for (double[] costs : problem.cost()) {
      sum += Arrays.stream(costs).filter(cost -> cost < Double.POSITIVE_INFINITY).max().orElse(0);
    }
    return sum;
  }

  /**
   * The best plan with any number of moves, searched for until it is proven near enough. Each stage
   * goes on from the plans, multipliers and bounds of the one before.
   */
  Answer best() {
    int all = problem.boxCount();
    plans.offer(problem.now());
    search.price(all);
    search.annealing.anneal(problem.now(), all, effort.first(), 0);
    double bound = search.search(all, Double.NEGATIVE_INFINITY, BOUND_STEPS, effort.exact());
    if (!near(bound) && effort.coolings() > 0) {
      search.annealing.anneal(problem.now(), all, effort.cooling() / 30, 0);
      search.annealing.anneal(problem.now(), all, 4 * effort.cooling() / 30, 1);
      bound = search.search(all, bound, LONG_BOUND_STEPS, effort.exact() / 2);
      for (int its = 0; its < effort.coolings() && !near(bound); its++) {
        search.annealing.anneal(problem.now(), all, effort.cooling(), FIRST_SEED + its);
      }
    }
    return answer(
        all, near(bound) ? bound : search.search(all, bound, MORE_BOUND_STEPS, effort.exact()));
  }

  /** True if hardly anything is left to gain beside what the best plan found gains. */
  private boolean near(double bound) {
    double best = Math.min(ceiling, plans.cost(problem.boxCount()));
    double now = problem.cost(problem.now()); // within its limits or not
    double gain = now < Double.POSITIVE_INFINITY ? Math.max(0, now - best) : 0;
    return bound >= best - Math.max(tolerance(best), LITTLE * gain);
  }

  /** The plan that comes closest to keeping every limit, where none does. */
  int[] closest() {
    return search.annealing.closest();
  }

  /** The best plan, and the curve up to it. */
  Curve curve() {
    Answer best = best();
    if (!best.found()) {
      return new Curve(best, List.of());
    }
    int last = Math.min(MOST_ROWS, plans.bestMoves(problem.boxCount()));
    for (int k = 1; k <= last; k++) {
      search.price(k);
      int[] from = plans.plan(k);
      search.annealing.anneal(from.length == 0 ? problem.now() : from, k, effort.rowCooling(), k);
    }
    // Many moves first: their multipliers are nearest to those of the best plan.
    List<Double> bounds = new ArrayList<>();
    double bound = best.bound();
    for (int k = last; k >= 0; k--) {
      bound = k == 0 ? plans.cost(0) : search.search(k, bound, MORE_BOUND_STEPS, effort.rowExact());
      bounds.add(0, bound);
    }
    Answer top = answer(problem.boxCount(), best.bound());
    List<Answer> rows = new ArrayList<>();
    for (int k = 0; k <= last; k++) {
      rows.add(answer(k, bounds.get(k)));
      if (rows.get(k).cost() - top.cost() < tolerance(top.cost())) {
        break;
      }
    }
    return new Curve(top, rows);
  }

  /**
   * The plan that is best where each moved box counts for so much more, of equals the one with
   * fewest moves; asked after {@link #curve}.
   *
   * @param charge on each move, kg m
   */
  int[] worthwhile(double charge) {
    return plans.plan(plans.worthwhile(charge));
  }

  private Answer answer(int moves, double bound) {
    double cost = plans.cost(moves);
    double least = Math.min(cost, ceiling);
    double proven = bound >= least - tolerance(least) ? cost : bound;
    List<Integer> places = Arrays.stream(plans.plan(moves)).boxed().toList();
    return new Answer(places, cost, proven);
  }
}
