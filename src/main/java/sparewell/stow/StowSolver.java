package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Solves a stowing problem: the best plan, and the best plans with few moves. */
final class StowSolver {
  /** Most rows after the first that the curve has. */
  static final int MOST_ROWS = 15;

  private final StowProblem problem;
  private final Effort effort;
  private final double ceiling;
  private final Plans plans;
  private final StowSearch search;

  StowSolver(StowProblem problem, Effort effort) {
    this.problem = problem;
    this.effort = effort;
    ceiling = ceiling(problem);
    plans = new Plans(problem);
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

    /** Whether it is proven best, or proven that there is none. */
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
    for (double[] costs : problem.cost) {
      sum += Arrays.stream(costs).filter(cost -> cost < Double.POSITIVE_INFINITY).max().orElse(0);
    }
    return sum;
  }

  /** The best plan with any number of moves. */
  Answer best() {
    int all = problem.boxCount;
    plans.offer(problem.now);
    double bound = Double.NEGATIVE_INFINITY;
    long steps = effort.steps() * all;
    long work = effort.work();
    double gap = Double.POSITIVE_INFINITY;
    for (int stage = 0; stage < effort.stages(); stage++) {
      double cost = plans.cost(all);
      anneal(all, steps, stage);
      bound = Math.max(bound, search.search(all, work));
      double left = Math.min(ceiling, plans.cost(all)) - bound;
      boolean stalled =
          left > effort.stalledShare() * gap && plans.cost(all) > cost - tolerance(cost);
      if (left <= tolerance(bound) || stalled) {
        break;
      }
      gap = left;
      steps *= 2;
      work *= 4;
    }
    return answer(all, bound);
  }

  /** The plan that comes closest to keeping every limit, where none does. */
  int[] closest() {
    return plans.closest();
  }

  /** The best plan, and the curve up to it. */
  Curve curve() {
    Answer best = best();
    if (!best.found()) {
      return new Curve(best, List.of());
    }
    int last = Math.min(MOST_ROWS, plans.bestMoves(problem.boxCount));
    for (int k = 1; k <= last; k++) {
      annealRow(k);
    }
    // Many moves first: their prices are nearest to those of the best plan.
    List<Double> bounds = new ArrayList<>();
    double bound = best.bound();
    for (int k = last; k >= 0; k--) {
      bound = Math.max(bound, k == 0 ? plans.cost(0) : search.search(k, effort.rowWork()));
      bounds.add(0, bound);
    }
    Answer top = answer(problem.boxCount, best.bound());
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
   * @param price of a move, kg m
   */
  int[] worthwhile(double price) {
    return plans.plan(plans.worthwhile(price));
  }

  private void annealRow(int moves) {
    long steps = effort.rowSteps() * problem.boxCount / 2;
    for (int round = 0; round < 2; round++) {
      anneal(moves, steps, round);
    }
  }

  private void anneal(int moves, long steps, int round) {
    int[] known = plans.plan(moves);
    int[] from = known.length > 0 ? known : problem.now;
    plans.anneal(from, moves, steps, round % 2 == 0 ? 0.5 : 0.1, round + 1);
  }

  private Answer answer(int moves, double bound) {
    double cost = plans.cost(moves);
    double proven = bound >= Math.min(cost, ceiling) - tolerance(bound) ? cost : bound;
    List<Integer> places = Arrays.stream(plans.plan(moves)).boxed().toList();
    return new Answer(places, cost, proven);
  }
}
