package sparewell.stow;

import java.util.Arrays;

/**
 * Relaxes 'each box in one place': each place then takes its most valuable set of boxes exactly, a
 * box being worth its multiplier less what it costs there. The bound is that of the
 * set-partitioning relaxation, tighter than linear programming, above all where a place takes few
 * boxes.
 *
 * <p>Value: sum of the boxes' multipliers - sum of the places' best values - multiplier of side
 * moment x its limit - multiplier of a move x number of moves, kg m.
 */
final class AssignmentRelaxation extends LagrangianRelaxation {
  private final Knapsack[] knapsacks;
  private final double[][] worth;
  private final double[] placeValue;
  private final long[] loadRoom;
  private final long[] volumeRoom;
  private final boolean[] fixed;
  private final boolean[][] chosen;

  /** By box and place: the bound where the box stands there, see {@link #fix}. */
  private final double[][] forced;

  AssignmentRelaxation(StowProblem problem) {
    super(problem, problem.boxCount(), 0, 0.3);
    knapsacks = new Knapsack[m];
    for (int j = 0; j < m; j++) {
      knapsacks[j] = new Knapsack(problem.volumeMm3(), problem.weightMg());
    }
    worth = new double[m][n];
    placeValue = new double[m];
    loadRoom = new long[m];
    volumeRoom = new long[m];
    fixed = new boolean[n];
    chosen = new boolean[n][m];
    forced = new double[n][m];
  }

  /** Starts from multipliers of the limits, where its bound is no less than theirs. */
  void start(LimitRelaxation limits, boolean[][] open) {
    for (int i = 0; i < n; i++) {
      multiplier[i] = limits.least(open[i], i);
    }
    multiplier[ofSide] = limits.multiplier[limits.ofSide];
    multiplier[ofMove] = limits.multiplier[limits.ofMove];
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

  @Override
  double evaluate(boolean[][] open, int mostMoves) {
    System.arraycopy(problem.loadRoomMg(), 0, loadRoom, 0, m);
    System.arraycopy(problem.volumeRoomMm3(), 0, volumeRoom, 0, m);
    double total = begin(mostMoves);
    for (int i = 0; i < n; i++) {
      int only = only(open[i]);
      if (only == NONE) {
        return Double.POSITIVE_INFINITY;
      }
      fixed[i] = only >= 0;
      subgradient[i] = fixed[i] ? 0 : 1;
      Arrays.fill(chosen[i], false);
      if (fixed[i]) {
        loadRoom[only] -= problem.weightMg()[i];
        volumeRoom[only] -= problem.volumeMm3()[i];
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
      for (int i = 0; i < n; i++) {
        if (knapsack.holds(i)) {
          take(i, j);
        }
      }
    }
    end();
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
    subgradient[i] -= fixed[i] ? 0 : 1;
    count(i, j);
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
      long load = loadRoom[j] - problem.weightMg()[box];
      long volume = volumeRoom[j] - problem.volumeMm3()[box];
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
