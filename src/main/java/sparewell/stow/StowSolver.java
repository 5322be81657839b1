package sparewell.stow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** Solves a stowing problem: the best plan, and the best plans with few moves. */
final class StowSolver {
  /** Most rows after the first that the curve has. */
  static final int MOST_ROWS = 15;

  private final StowProblem problem;
  private final Effort effort;
  private final BranchAndBound search;

  StowSolver(StowProblem problem, Effort effort) {
    this.problem = problem;
    this.effort = effort;
    search = new BranchAndBound(problem, ceiling(problem));
  }

  /**
   * A plan with what is proven about it.
   *
   * @param places place of each box; empty where no plan was found
   * @param moment its moment, kg m
   * @param bound no plan (with so few moves) has less, kg m
   * @param proven whether it is proven best, or proven that there is none
   */
  record Answer(List<Integer> places, double moment, double bound, boolean proven) {
    boolean found() {
      return moment < Double.POSITIVE_INFINITY;
    }

    int[] array() {
      return places.stream().mapToInt(Integer::intValue).toArray();
    }
  }

  /**
   * Answers for the best plan and for each number of moves.
   *
   * @param best best plan with any number of moves
   * @param rows row k: best plan with at most k moves
   */
  record Curve(Answer best, List<Answer> rows) {}

  /** The best plan with any number of moves. */
  Answer best() {
    Annealing plans = new Annealing(problem, -1);
    for (int round = 0; round < effort.rounds(); round++) {
      anneal(plans, effort.roundSteps(), round);
    }
    return answer(plans, search.search(-1, plans, effort.searchWork()));
  }

  private void annealRow(Annealing plans, double least) {
    for (int round = 0; round < 2 && !same(plans.bestMoment(), least); round++) {
      anneal(plans, effort.rowSteps() / 2, round);
    }
  }

  private void anneal(Annealing plans, long steps, int round) {
    int[] from = plans.best().length > 0 ? plans.best() : problem.now;
    plans.run(from, steps, round % 2 == 0 ? 0.5 : 0.1, round + 1);
  }

  private Answer answer(Annealing plans, double bound) {
    double moment = plans.bestMoment();
    if (moment == Double.POSITIVE_INFINITY) {
      return new Answer(List.of(), moment, bound, bound >= ceiling(problem));
    }
    return plan(Arrays.stream(plans.best()).boxed().toList(), moment, bound);
  }

  private static Answer plan(List<Integer> places, double moment, double bound) {
    boolean proven = bound >= moment - tolerance(moment);
    return new Answer(places, moment, proven ? moment : bound, proven);
  }

  /** Values closer than this count as the same. */
  static double tolerance(double moment) {
    return 1e-8 * Math.max(1, Math.abs(moment));
  }

  private static double ceiling(StowProblem problem) {
    double sum = 1;
    for (int i = 0; i < problem.boxCount; i++) {
      double most = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < problem.placeCount; j++) {
        if (problem.allowed[i][j]) {
          most = Math.max(most, problem.momentKgM(i, j));
        }
      }
      sum += most;
    }
    return sum;
  }

  /** The plan that comes closest to keeping every limit, where none does. */
  int[] closest() {
    Annealing plans = new Annealing(problem, -1);
    for (int round = 0; round < effort.rounds(); round++) {
      plans.run(problem.now, effort.roundSteps(), 0.5, round + 1);
    }
    return plans.closest();
  }

  /** The best plan, and the curve up to it. */
  Curve curve() {
    Answer best = best();
    if (!best.found()) {
      return new Curve(best, List.of());
    }
    int last = Math.min(MOST_ROWS, problem.moves(best.array()));
    List<Annealing> plans = new ArrayList<>();
    for (int k = 1; k <= last; k++) {
      Annealing row = new Annealing(problem, k);
      if (k > 1) {
        row.offer(plans.get(k - 2).best());
      }
      row.offer(best.array());
      plans.add(row);
      annealRow(row, best.moment());
    }
    // Many moves first: their prices are nearest to those of the best plan.
    List<Answer> rows = new ArrayList<>(Collections.nCopies(last + 1, stay()));
    for (int k = last; k >= 1; k--) {
      rows.set(k, answer(plans.get(k - 1), search.search(k, plans.get(k - 1), effort.rowWork())));
    }
    return settled(best, rows);
  }

  /** The present stow, where it keeps all limits. */
  private Answer stay() {
    if (!problem.feasible(problem.now)) {
      return new Answer(List.of(), Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, true);
    }
    double moment = problem.moment(problem.now) * 1e-12;
    return plan(Arrays.stream(problem.now).boxed().toList(), moment, moment);
  }

  /**
   * The best plan with at most that many moves, with the effort of a row.
   *
   * @param starts plans to begin with; those that break a limit or move too many are passed over
   */
  Answer row(int mostMoves, List<int[]> starts) {
    Annealing plans = new Annealing(problem, mostMoves);
    plans.offer(problem.now);
    starts.forEach(plans::offer);
    annealRow(plans, Double.NEGATIVE_INFINITY);
    return answer(plans, search.search(mostMoves, plans, effort.rowWork()));
  }

  /** False where one of them is infinite: as far apart as the tolerance is then, and not within. */
  private static boolean same(double one, double other) {
    return Math.abs(one - other) < tolerance(other);
  }

  /** A bound for many moves holds for few, a plan with few moves serves for many. */
  private static Curve settled(Answer best, List<Answer> rows) {
    Answer top = best;
    for (Answer row : rows) {
      double better = top.moment() - row.moment();
      double same = tolerance(top.moment());
      if (better > same || top == best && better >= -same) {
        top = row;
      }
    }
    List<Answer> result = new ArrayList<>(rows);
    for (int k = 1; k < rows.size(); k++) {
      Answer fewer = result.get(k - 1);
      if (fewer.moment() < result.get(k).moment()) {
        result.set(k, plan(fewer.places(), fewer.moment(), result.get(k).bound()));
      }
    }
    double known = best.bound();
    for (int k = rows.size() - 1; k >= 0; k--) {
      Answer row = result.get(k);
      if (row.found()) {
        known = Math.max(known, row.bound());
        result.set(k, plan(row.places(), row.moment(), known));
      }
    }
    List<Answer> upToBest = new ArrayList<>();
    for (Answer row : result) {
      upToBest.add(row);
      if (same(row.moment(), top.moment())) {
        break;
      }
    }
    return new Curve(plan(top.places(), top.moment(), best.bound()), upToBest);
  }
}
