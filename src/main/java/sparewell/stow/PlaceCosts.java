package sparewell.stow;

import java.util.Arrays;

/** What each box costs in each place that it may stand in: its moment there, kg m. */
final class PlaceCosts {
  /** Cost of a move where all else is equal, kg m: fewer moves win ties. */
  private static final double TIE = 1e-6;

  private final double[][] cost;
  private final int[][] options;

  PlaceCosts(StowProblem problem) {
    int m = problem.placeCount;
    cost = new double[problem.boxCount][m];
    options = new int[problem.boxCount][];
    for (int i = 0; i < options.length; i++) {
      int count = 0;
      int[] open = new int[m];
      for (int j = 0; j < m; j++) {
        cost[i][j] = Double.POSITIVE_INFINITY;
        if (problem.allowed[i][j]) {
          cost[i][j] = problem.momentKgM(i, j) + (j == problem.now[i] ? 0 : TIE);
          open[count++] = j;
        }
      }
      options[i] = Arrays.copyOf(open, count);
    }
  }

  /** By box and place, infinite where the box may not stand; to be read only. */
  double[][] table() {
    return cost;
  }

  /** The places that a box may stand in; to be read only. */
  int[] options(int box) {
    return options[box];
  }

  /** Of those the first that costs least. */
  int cheapest(int box) {
    int at = options[box][0];
    for (int option : options[box]) {
      at = cost[box][option] < cost[box][at] ? option : at;
    }
    return at;
  }

  /** By how much its place changes the cost of a box, kg m, on average over the boxes. */
  double spread() {
    double range = 0;
    for (int i = 0; i < options.length; i++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j : options[i]) {
        low = Math.min(low, cost[i][j]);
        high = Math.max(high, cost[i][j]);
      }
      range += high - low;
    }
    return range / Math.max(1, options.length);
  }
}
