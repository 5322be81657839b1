package sparewell.stow;

import java.util.Arrays;

/**
 * A proven lower bound on the moment: the rule 'each box in one place' is priced (Lagrangian
 * relaxation), and each place then takes its most valuable set of boxes exactly. Side limits and
 * the number of moves are priced as well. Any prices give a valid bound; a subgradient ascent looks
 * for good ones. The bound is that of the set-partitioning relaxation, tighter than linear
 * programming, above all where a place takes few boxes.
 *
 * <p>Values are in kg m.
 *
 * @see "M. L. Fisher, The Lagrangian relaxation method for solving integer programming problems,
 *     Management Science 27 (1981), from memory"
 */
final class DualBound {
  private static final double SMOOTHING = 0.15;

  final StowProblem problem;
  private int mostMoves = -1;
  final double[][] cost;
  final double[][] average;
  final int[] holders;
  private final Prices prices;
  private final double[] boxSlack;
  private final double[] placeValue;
  private final Knapsack[] knapsacks;
  private final double[][] side;
  private final long[] loadRoom;
  private final long[] volumeRoom;
  private final boolean[] fixed;
  private final boolean[][] chosen;
  private double sideNow;
  private int movesNow;

  DualBound(StowProblem problem) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    this.problem = problem;
    cost = new double[n][m];
    side = new double[n][m];
    average = new double[n][m];
    chosen = new boolean[n][m];
    holders = new int[n];
    boxSlack = new double[n];
    placeValue = new double[m];
    knapsacks = new Knapsack[m];
    for (int j = 0; j < m; j++) {
      knapsacks[j] = new Knapsack(n);
    }
    loadRoom = new long[m];
    volumeRoom = new long[m];
    fixed = new boolean[n];
    double[] start = new double[n];
    double sides = 0;
    for (int i = 0; i < n; i++) {
      double sum = 0;
      int options = 0;
      for (int j = 0; j < m; j++) {
        cost[i][j] = problem.weightMg[i] * 1e-6 * (problem.stationUm[j] * 1e-6);
        side[i][j] = problem.weightMg[i] * 1e-6 * (problem.offsetUm[j] * 1e-6);
        if (problem.allowed[i][j]) {
          sum += cost[i][j];
          sides += Math.abs(side[i][j]);
          options++;
        }
      }
      start[i] = sum / Math.max(1, options);
    }
    prices = new Prices(start, Math.max(1e-9, sides / Math.max(1, n * m)));
  }

  /** From now on for at most so many moved boxes; negative for any number. */
  void mostMoves(int most) {
    mostMoves = most;
    prices.move = most < 0 ? 0 : prices.move;
  }

  /** The price of a moved box, kg m; 0 where any number may move. */
  double movePrice() {
    return prices.move;
  }

  /** How exactly the places' best sets are searched, kg m. */
  void knapsackTolerance(double value) {
    for (Knapsack knapsack : knapsacks) {
      knapsack.tolerance(value);
    }
  }

  /** Prices as they are now, to come back to. */
  double[] prices() {
    return prices.copy();
  }

  /** Takes up prices kept earlier. */
  void prices(double[] kept) {
    prices.take(kept);
    prices.move = mostMoves < 0 ? 0 : prices.move;
  }

  /** Starts the places' surrogate limits at the shares of volume that linear prices give. */
  void mixes(double[] shares) {
    for (int j = 0; j < knapsacks.length; j++) {
      knapsacks[j].mix(shares[j]);
    }
  }

  long work() {
    return Arrays.stream(knapsacks).mapToLong(Knapsack::work).sum();
  }

  /** The bound at the present prices; positive infinity where no plan is left. */
  double evaluate(boolean[][] allowed) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    System.arraycopy(problem.loadRoomMg, 0, loadRoom, 0, m);
    System.arraycopy(problem.volumeRoomMm3, 0, volumeRoom, 0, m);
    double total = -(prices.side >= 0 ? prices.side * sideHigh() : prices.side * sideLow());
    if (mostMoves >= 0) {
      total -= prices.move * mostMoves;
    }
    sideNow = 0;
    movesNow = 0;
    for (int i = 0; i < n; i++) {
      int only = only(allowed[i]);
      if (only == -2) {
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
    for (int j = 0; j < m; j++) {
      Knapsack knapsack = knapsacks[j];
      placeValue[j] = filled(allowed, j, -1, loadRoom[j], volumeRoom[j]);
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

  private void take(int i, int j) {
    chosen[i][j] = true;
    holders[i]++;
    sideNow += side[i][j];
    if (j != problem.now[i]) {
      movesNow++;
    }
  }

  /** Value of the best set for the place without one box (-1: of all that are open). */
  private double filled(boolean[][] allowed, int j, int without, long load, long volume) {
    Knapsack knapsack = knapsacks[j];
    knapsack.clear();
    for (int at = 0; at < problem.boxCount; at++) {
      int i = knapsack.turn(at);
      if (!fixed[i] && i != without && allowed[i][j]) {
        knapsack.offer(
            i,
            prices.box[i] - priced(i, j),
            problem.volumeMm3[i],
            problem.weightMg[i],
            volume,
            load);
      }
    }
    return knapsack.solve(volume, load);
  }

  private double priced(int i, int j) {
    return cost[i][j] + prices.side * side[i][j] + (j == problem.now[i] ? 0 : prices.move);
  }

  private static int only(boolean[] row) {
    int found = -2;
    for (int j = 0; j < row.length; j++) {
      if (row[j]) {
        if (found >= 0) {
          return -1;
        }
        found = j;
      }
    }
    return found;
  }

  private double sideHigh() {
    return problem.sideHighest * 1e-12;
  }

  private double sideLow() {
    return problem.sideLowest * 1e-12;
  }

  /**
   * Raises the bound by at most that many steps, towards {@code target}; leaves the best prices
   * found in force and evaluated.
   *
   * @param steadiness starting length of a step, about 1
   * @return the best bound found
   */
  double ascend(boolean[][] allowed, double target, int steps, double steadiness) {
    double theta = steadiness;
    double best = -Double.MAX_VALUE;
    int sinceBetter = 0;
    int shrunk = 0;
    prices.forgetDirection();
    prices.keep();
    for (int at = 0; at < steps; at++) {
      double bound = evaluate(allowed);
      if (bound == Double.POSITIVE_INFINITY) {
        return bound;
      }
      smooth(at == 0);
      if (bound > best + 1e-9 * Math.abs(bound)) {
        best = bound;
        prices.keep();
        sinceBetter = 0;
        if (best >= target) {
          return best;
        }
      } else if (++sinceBetter >= 8) {
        theta *= 0.7;
        sinceBetter = 0;
        if (++shrunk % 4 == 0) {
          prices.restore();
          prices.forgetDirection();
        }
        if (theta < 1e-3) {
          break;
        }
      }
      for (int i = 0; i < problem.boxCount; i++) {
        boxSlack[i] = fixed[i] ? 0 : 1 - holders[i];
      }
      double rise = theta * Math.max(1e-9, target - bound);
      if (!prices.climb(boxSlack, sideSlack(), mostMoves >= 0 ? movesNow - mostMoves : 0, rise)) {
        break;
      }
    }
    prices.restore();
    evaluate(allowed);
    return best;
  }

  /** Side moment beyond the limit that is priced or broken, kg m. */
  private double sideSlack() {
    if (prices.side > 0 || (prices.side == 0 && sideNow > sideHigh())) {
      return sideNow - sideHigh();
    }
    return prices.side < 0 || sideNow < sideLow() ? sideNow - sideLow() : 0;
  }

  private void smooth(boolean first) {
    double share = first ? 1 : SMOOTHING;
    for (int i = 0; i < problem.boxCount; i++) {
      for (int j = 0; j < problem.placeCount && !fixed[i]; j++) {
        average[i][j] += share * ((chosen[i][j] ? 1 : 0) - average[i][j]);
      }
    }
  }

  /**
   * Strikes out every place of a box that cannot be part of a plan better than {@code target}, with
   * the bound as just evaluated.
   *
   * @return how many were struck out; -1 where no plan is left
   */
  int strikeOut(boolean[][] allowed, double bound, double target) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    int struck = 0;
    boolean[] fixedBefore = fixed.clone();
    for (int i = 0; i < n; i++) {
      if (fixedBefore[i]) {
        continue;
      }
      double gone = 0;
      double[] lost = new double[m];
      for (int j = 0; j < m; j++) {
        if (chosen[i][j]) {
          lost[j] = placeValue[j] - filled(allowed, j, i, loadRoom[j], volumeRoom[j]);
          gone += lost[j];
        }
      }
      int left = 0;
      for (int j = 0; j < m; j++) {
        if (!allowed[i][j]) {
          continue;
        }
        long load = loadRoom[j] - problem.weightMg[i];
        long volume = volumeRoom[j] - problem.volumeMm3[i];
        double forced = Double.POSITIVE_INFINITY;
        if (load >= 0 && volume >= 0) {
          if (chosen[i][j]) {
            forced = bound + gone - lost[j];
          } else {
            double rest = filled(allowed, j, i, load, volume);
            forced = bound + gone + placeValue[j] - (prices.box[i] - priced(i, j)) - rest;
          }
        }
        if (forced >= target) {
          allowed[i][j] = false;
          struck++;
        } else {
          left++;
        }
      }
      if (left == 0) {
        return -1;
      }
    }
    return struck;
  }
}
