package sparewell.stow;

import java.util.Arrays;

/**
 * A proven lower bound on the cost by Lagrangian relaxation of the rule 'each box in one place':
 * each place then takes its most valuable set of boxes exactly, a box being worth its multiplier
 * less what it costs there. Side limits and the number of moves have multipliers as well. Any
 * multipliers give a valid bound; a subgradient ascent looks for good ones. The bound is that of
 * the set-partitioning relaxation, tighter than linear programming, above all where a place takes
 * few boxes.
 *
 * <p>Value: sum of the boxes' multipliers - sum of the places' best values - multiplier of side
 * moment x its limit - multiplier of a move x number of moves, kg m.
 *
 * @see "M. L. Fisher, The Lagrangian relaxation method for solving integer programming problems,
 *     Management Science 27 (1981), from memory"
 */
final class LagrangianBound {
  /** Tolerance of the knapsacks as a share of what is left to gain. */
  private static final double LOOSE = 0.002;

  /** Length of the last step as a share of the first. */
  private static final double SHORTEST = 0.3;

  private final StowProblem problem;
  private final int n;
  private final int m;

  /** Multipliers of each box, then of the side moment and of a move. */
  private final double[] multiplier;

  private final double[] subgradient;
  private double[] bestMultiplier;
  private final double sideScale;
  private final Knapsack[] knapsacks;
  private final double[][] worth;
  private final double[] placeValue;
  private final long[] loadRoom;
  private final long[] volumeRoom;
  private final boolean[] fixed;
  private final boolean[][] chosen;

  /** By box and place: the bound where the box stands there, see {@link #fix}. */
  private final double[][] forced;

  LagrangianBound(StowProblem problem) {
    this.problem = problem;
    n = problem.boxCount;
    m = problem.placeCount;
    multiplier = new double[n + 2];
    subgradient = new double[n + 2];
    double sides = 0;
    for (int i = 0; i < n; i++) {
      double sum = 0;
      int open = 0;
      for (int j = 0; j < m; j++) {
        sides += Math.abs(side(i, j));
        if (problem.allowed(i, j)) {
          sum += problem.cost[i][j];
          open++;
        }
      }
      multiplier[i] = sum / Math.max(1, open);
    }
    bestMultiplier = multiplier.clone();
    sideScale = Math.max(1e-9, sides / Math.max(1, n * m));
    knapsacks = new Knapsack[m];
    for (int j = 0; j < m; j++) {
      knapsacks[j] = new Knapsack(problem.volumeMm3, problem.weightMg);
    }
    worth = new double[m][n];
    placeValue = new double[m];
    loadRoom = new long[m];
    volumeRoom = new long[m];
    fixed = new boolean[n];
    chosen = new boolean[n][m];
    forced = new double[n][m];
  }

  private double side(int box, int at) {
    return problem.weightMg[box] * 1e-6 * (problem.offsetUm[at] * 1e-6);
  }

  /** The multiplier of a moved box, kg m. */
  double moveMultiplier() {
    return multiplier[n + 1];
  }

  /** Multipliers as they are now, to come back to. */
  double[] multipliers() {
    return multiplier.clone();
  }

  /** Takes up multipliers kept earlier. */
  void multipliers(double[] kept) {
    System.arraycopy(kept, 0, multiplier, 0, multiplier.length);
  }

  /** Work done so far, see {@link Knapsack#work}. */
  long work() {
    return Arrays.stream(knapsacks).mapToLong(Knapsack::work).sum();
  }

  /** The open place in which the box costs least, by the bounds of {@link #fix}. */
  int cheapest(boolean[][] open, int box) {
    int found = -1;
    for (int j = 0; j < m; j++) {
      if (open[box][j] && (found < 0 || forced[box][j] < forced[box][found])) {
        found = j;
      }
    }
    return found;
  }

  /**
   * The bound at the present multipliers, kg m; positive infinity where no plan is left.
   *
   * @param open the open places of each box; a box with one of them stands in it
   * @param mostMoves most boxes that may move
   */
  double evaluate(boolean[][] open, int mostMoves) {
    System.arraycopy(problem.loadRoomMg, 0, loadRoom, 0, m);
    System.arraycopy(problem.volumeRoomMm3, 0, volumeRoom, 0, m);
    double sideLimit = (multiplier[n] >= 0 ? problem.sideHighest : problem.sideLowest) * 1e-12;
    double total = -multiplier[n] * sideLimit - multiplier[n + 1] * mostMoves;
    subgradient[n] = 0;
    subgradient[n + 1] = -mostMoves;
    for (int i = 0; i < n; i++) {
      int only = only(open[i]);
      if (only == NONE) {
        return Double.POSITIVE_INFINITY;
      }
      fixed[i] = only >= 0;
      subgradient[i] = fixed[i] ? 0 : 1;
      Arrays.fill(chosen[i], false);
      if (fixed[i]) {
        loadRoom[only] -= problem.weightMg[i];
        volumeRoom[only] -= problem.volumeMm3[i];
        if (loadRoom[only] < 0 || volumeRoom[only] < 0) {
          return Double.POSITIVE_INFINITY;
        }
        total += relaxed(i, only);
        take(i, only);
      } else {
        total += multiplier[i];
      }
    }
    for (int j = 0; j < m; j++) {
      for (int i = 0; i < n; i++) {
        worth[j][i] = !fixed[i] && open[i][j] ? multiplier[i] - relaxed(i, j) : 0;
      }
      Knapsack knapsack = knapsacks[j];
      placeValue[j] = knapsack.solve(worth[j], volumeRoom[j], loadRoom[j]);
      total -= placeValue[j];
      for (int index = 0; index < knapsack.count(); index++) {
        if (knapsack.holds(index)) {
          take(knapsack.boxAt(index), j);
        }
      }
    }
    boundSide();
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

  private double relaxed(int i, int j) {
    double moving = j == problem.now[i] ? 0 : multiplier[n + 1];
    return problem.cost[i][j] + multiplier[n] * side(i, j) + moving;
  }

  private void take(int i, int j) {
    chosen[i][j] = true;
    subgradient[i] -= fixed[i] ? 0 : 1;
    subgradient[n] += side(i, j);
    subgradient[n + 1] += j == problem.now[i] ? 0 : 1;
  }

  /**
   * From the side moment to how far it lies beyond the limit that has a multiplier or is broken.
   */
  private void boundSide() {
    double high = subgradient[n] - problem.sideHighest * 1e-12;
    double low = subgradient[n] - problem.sideLowest * 1e-12;
    subgradient[n] =
        multiplier[n] > 0 ? high : multiplier[n] < 0 ? low : Math.max(0, high) + Math.min(0, low);
  }

  /**
   * Raises the bound by at most that many steps, towards {@code target}; leaves the best
   * multipliers found in force and evaluated.
   *
   * @param steps at least 1
   * @param steadiness starting length of a step, about 1
   * @return the best bound found; positive infinity where no plan is left
   */
  double ascend(
      boolean[][] open, int mostMoves, double least, double target, int steps, double steadiness) {
    double theta = steadiness;
    double fall = Math.pow(SHORTEST, 1.0 / steps);
    double best = -Double.MAX_VALUE;
    for (int at = 0; at < steps; at++) {
      // the less is left to gain, the more exactly the places are searched
      double tolerance = (target - Math.max(best, least)) * LOOSE;
      for (Knapsack knapsack : knapsacks) {
        knapsack.tolerance(Math.max(0, tolerance));
      }
      double bound = evaluate(open, mostMoves);
      if (bound == Double.POSITIVE_INFINITY) {
        return bound;
      }
      if (bound > best) {
        best = bound;
        bestMultiplier = multiplier.clone();
        if (best >= target) {
          return best;
        }
      }
      if (!climb(theta * Math.max(1e-9, target - bound))) {
        break;
      }
      theta *= fall;
    }
    multipliers(bestMultiplier);
    evaluate(open, mostMoves);
    return best;
  }

  /** One step uphill, by that much if the bound were straight; false where there is no way up. */
  private boolean climb(double rise) {
    subgradient[n] /= sideScale;
    double length = 0;
    for (double pull : subgradient) {
      length += pull * pull;
    }
    if (length < 1e-12) {
      return false;
    }
    double size = rise / length;
    for (int i = 0; i < n; i++) {
      multiplier[i] += size * subgradient[i];
    }
    double before = multiplier[n];
    multiplier[n] += size * subgradient[n] / sideScale;
    if (before * multiplier[n] < 0) {
      multiplier[n] = 0; // only one of the two side limits has a multiplier at a time
    }
    multiplier[n + 1] = Math.max(0, multiplier[n + 1] + size * subgradient[n + 1]);
    return true;
  }

  /**
   * Closes, by its reduced cost, every place of a box that no plan cheaper than {@code target}
   * uses.
   *
   * @return how many were closed; -1 where no plan is left
   */
  int fix(boolean[][] open, int mostMoves, double target) {
    double bound = evaluate(open, mostMoves);
    int closed = 0;
    for (int i = 0; i < n; i++) {
      if (fixed[i]) {
        continue;
      }
      force(open[i], bound, i);
      boolean left = false;
      for (int j = 0; j < m; j++) {
        if (open[i][j] && forced[i][j] >= target) {
          open[i][j] = false;
          closed++;
        }
        left |= open[i][j];
      }
      if (!left) {
        return -1;
      }
    }
    return closed;
  }

  /** Bounds of the plans in which the box stands in each place, as just evaluated. */
  private void force(boolean[] open, double bound, int box) {
    double gone = 0;
    double[] lost = new double[m];
    for (int j = 0; j < m; j++) {
      if (chosen[box][j]) {
        lost[j] = placeValue[j] - without(box, j, volumeRoom[j], loadRoom[j]);
        gone += lost[j];
      }
    }
    for (int j = 0; j < m; j++) {
      long load = loadRoom[j] - problem.weightMg[box];
      long volume = volumeRoom[j] - problem.volumeMm3[box];
      if (!open[j] || load < 0 || volume < 0) {
        forced[box][j] = Double.POSITIVE_INFINITY;
      } else if (chosen[box][j]) {
        forced[box][j] = bound + gone - lost[j];
      } else {
        double here = multiplier[box] - relaxed(box, j);
        forced[box][j] = bound + gone + placeValue[j] - here - without(box, j, volume, load);
      }
    }
  }

  /** Value of the best set for the place without one box. */
  private double without(int box, int at, long volume, long load) {
    double its = worth[at][box];
    worth[at][box] = 0;
    double value = knapsacks[at].solve(worth[at], volume, load);
    worth[at][box] = its;
    return value;
  }
}
