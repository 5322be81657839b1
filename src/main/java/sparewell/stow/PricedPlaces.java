package sparewell.stow;

import java.util.Arrays;

/**
 * The bound at given prices: each place takes the set of open boxes that is worth most there, a box
 * being worth its price less what it costs in that place. Boxes with one open place stand in it.
 *
 * <p>Value: sum of box prices - sum of the places' best values - price of side moment x its limit -
 * price of a move x number of moves, kg m. No plan within the limits has a smaller moment, whatever
 * the prices.
 */
final class PricedPlaces {
  private final StowProblem problem;
  private final Prices prices;

  /** Moment and side moment of each box in each place, kg m. */
  private final double[][] cost;

  private final double[][] side;
  private final double sideHigh;
  private final double sideLow;

  private final Knapsack[] knapsacks;
  private final double[] placeValue;
  private final long[] loadRoom;
  private final long[] volumeRoom;
  private final boolean[] fixed;
  private final boolean[][] chosen;
  private final int[] holders;
  private double sideNow;
  private int movesNow;

  PricedPlaces(StowProblem problem, Prices prices) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    this.problem = problem;
    this.prices = prices;
    sideHigh = problem.sideHighest * 1e-12;
    sideLow = problem.sideLowest * 1e-12;
    cost = new double[n][m];
    side = new double[n][m];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < m; j++) {
        cost[i][j] = problem.momentKgM(i, j);
        side[i][j] = problem.sideMomentKgM(i, j);
      }
    }
    knapsacks = new Knapsack[m];
    for (int j = 0; j < m; j++) {
      knapsacks[j] = new Knapsack(n);
    }
    placeValue = new double[m];
    loadRoom = new long[m];
    volumeRoom = new long[m];
    fixed = new boolean[n];
    chosen = new boolean[n][m];
    holders = new int[n];
  }

  /** How exactly the places' best sets are searched, kg m. */
  void knapsackTolerance(double value) {
    for (Knapsack knapsack : knapsacks) {
      knapsack.tolerance(value);
    }
  }

  /** Starts the places' surrogate limits at those shares of volume. */
  void mixes(double[] shares) {
    for (int j = 0; j < knapsacks.length; j++) {
      knapsacks[j].mix(shares[j]);
    }
  }

  /** Work done so far, see {@link Knapsack#work}. */
  long work() {
    return Arrays.stream(knapsacks).mapToLong(Knapsack::work).sum();
  }

  /** Whether the box had but one open place when last evaluated. */
  boolean fixed(int box) {
    return fixed[box];
  }

  /** Whether that place took the box when last evaluated. */
  boolean chosen(int box, int at) {
    return chosen[box][at];
  }

  /** By how many places the box is short; below zero: too many took it. */
  int slack(int box) {
    return fixed[box] ? 0 : 1 - holders[box];
  }

  /** Moved boxes, counted once for each place that took them. */
  int moves() {
    return movesNow;
  }

  /** Side moment beyond the limit that is priced or broken, kg m. */
  double sideSlack() {
    if (prices.side > 0 || (prices.side == 0 && sideNow > sideHigh)) {
      return sideNow - sideHigh;
    }
    return prices.side < 0 || sideNow < sideLow ? sideNow - sideLow : 0;
  }

  /**
   * The bound at the present prices, kg m; positive infinity where no plan is left.
   *
   * @param allowed the open places of each box
   * @param mostMoves most boxes that may move; negative for any number
   */
  double evaluate(boolean[][] allowed, int mostMoves) {
    System.arraycopy(problem.loadRoomMg, 0, loadRoom, 0, loadRoom.length);
    System.arraycopy(problem.volumeRoomMm3, 0, volumeRoom, 0, volumeRoom.length);
    double total = -prices.side * (prices.side >= 0 ? sideHigh : sideLow);
    if (mostMoves >= 0) {
      total -= prices.move * mostMoves;
    }
    sideNow = 0;
    movesNow = 0;
    for (int i = 0; i < problem.boxCount; i++) {
      int only = only(allowed[i]);
      if (only == NONE) {
        return Double.POSITIVE_INFINITY;
      }
      fixed[i] = only >= 0;
      holders[i] = 0;
      Arrays.fill(chosen[i], false);
      if (fixed[i]) {
        loadRoom[only] -= problem.weightMg[i];
        volumeRoom[only] -= problem.volumeMm3[i];
        if (loadRoom[only] < 0 || volumeRoom[only] < 0) {
          return Double.POSITIVE_INFINITY;
        }
        total += priced(i, only);
        take(i, only);
      } else {
        total += prices.box[i];
      }
    }
    for (int j = 0; j < knapsacks.length; j++) {
      Knapsack knapsack = knapsacks[j];
      placeValue[j] = filled(allowed, j, NONE, loadRoom[j], volumeRoom[j]);
      knapsack.remember();
      total -= placeValue[j];
      for (int index = 0; index < knapsack.count(); index++) {
        if (knapsack.holds(index)) {
          take(knapsack.boxAt(index), j);
        }
      }
    }
    return total;
  }

  private static final int SEVERAL = -1;
  private static final int NONE = -2;

  /** The one open place of a box, else {@link #SEVERAL} or {@link #NONE}. */
  private static int only(boolean[] open) {
    int found = NONE;
    for (int j = 0; j < open.length; j++) {
      if (open[j]) {
        if (found >= 0) {
          return SEVERAL;
        }
        found = j;
      }
    }
    return found;
  }

  private void take(int i, int j) {
    chosen[i][j] = true;
    holders[i]++;
    sideNow += side[i][j];
    if (j != problem.now[i]) {
      movesNow++;
    }
  }

  /** Value of the best set for the place without one box ({@link #NONE}: of all open ones). */
  private double filled(boolean[][] allowed, int j, int without, long load, long volume) {
    Knapsack knapsack = knapsacks[j];
    knapsack.clear();
    for (int at = 0; at < problem.boxCount; at++) {
      int i = knapsack.turn(at);
      if (!fixed[i] && i != without && allowed[i][j]) {
        knapsack.offer(i, worth(i, j), problem.volumeMm3[i], problem.weightMg[i], volume, load);
      }
    }
    return knapsack.solve(volume, load);
  }

  private double priced(int i, int j) {
    return cost[i][j] + prices.side * side[i][j] + (j == problem.now[i] ? 0 : prices.move);
  }

  private double worth(int i, int j) {
    return prices.box[i] - priced(i, j);
  }

  /**
   * Bounds of the plans in which the box stands in each place, as just evaluated.
   *
   * @param bound what {@link #evaluate} gave
   * @param box one that is not fixed
   * @return one bound for each place; infinite where the box is not allowed or finds no room
   */
  double[] forced(boolean[][] allowed, double bound, int box) {
    int m = knapsacks.length;
    double gone = 0;
    double[] lost = new double[m];
    for (int j = 0; j < m; j++) {
      if (chosen[box][j]) {
        lost[j] = placeValue[j] - filled(allowed, j, box, loadRoom[j], volumeRoom[j]);
        gone += lost[j];
      }
    }
    double[] forced = new double[m];
    for (int j = 0; j < m; j++) {
      long load = loadRoom[j] - problem.weightMg[box];
      long volume = volumeRoom[j] - problem.volumeMm3[box];
      if (!allowed[box][j] || load < 0 || volume < 0) {
        forced[j] = Double.POSITIVE_INFINITY;
      } else if (chosen[box][j]) {
        forced[j] = bound + gone - lost[j];
      } else {
        double rest = filled(allowed, j, box, load, volume);
        forced[j] = bound + gone + placeValue[j] - worth(box, j) - rest;
      }
    }
    return forced;
  }
}
