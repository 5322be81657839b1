package sparewell.stow;

import java.util.Arrays;

/** Tries every assignment of a small problem: least moment for each number of moves. */
final class ExhaustiveSearch {
  private final StowProblem problem;
  private final int[] place;
  private final double[] exactly;

  private ExhaustiveSearch(StowProblem problem) {
    this.problem = problem;
    place = new int[problem.boxCount()];
    exactly = new double[problem.boxCount() + 1];
    Arrays.fill(exactly, Double.POSITIVE_INFINITY);
  }

  /**
   * Least moment in kg m with at most k moves, for k = 0 .. boxes; infinite where there is none.
   */
  static double[] leastByMoves(StowProblem problem) {
    ExhaustiveSearch search = new ExhaustiveSearch(problem);
    search.assign(0);
    double[] atMost = search.exactly.clone();
    for (int k = 1; k < atMost.length; k++) {
      atMost[k] = Math.min(atMost[k], atMost[k - 1]);
    }
    return atMost;
  }

  private void assign(int box) {
    if (box == problem.boxCount()) {
      if (problem.feasible(place)) {
        int moves = problem.moves(place);
        exactly[moves] = Math.min(exactly[moves], problem.cost(place));
      }
      return;
    }
    for (int at = 0; at < problem.placeCount(); at++) {
      place[box] = at;
      assign(box + 1);
    }
  }
}
