package sparewell.stow;

import java.util.Arrays;

/**
 * Packs some boxes anew as well as can be, the others staying: depth-first over the places of each
 * box, the biggest box first. Lower bound of a branch: the least reduced costs of the boxes left,
 * less the multipliers' worth of all room that was free. On the way to a good plan a box may also
 * stay {@link #outside}, and the side limit and the number of moves may be broken, each at a
 * penalty; a few heavy boxes among many may gain more than it takes, so what completes a plan keeps
 * every limit.
 */
final class Repacking {
  /** Penalties in units of what the place of a box usually changes. */
  private static final double PENALTY = 3;

  private final StowProblem problem;
  private final int n;
  private final int m;

  /** What the place of a box changes on average, kg m. */
  final double spread;

  /** Place number of a box that stands in no compartment. */
  final int outside;

  private final double[][] cost;
  private final double[][] reduced;
  private final double[][] multiplier;
  private final double sidePenalty;
  private double sideMultiplier;
  private double moveMultiplier;

  /**
   * By box: the places it may go to, least reduced cost first; and all boxes, the biggest first.
   */
  private final int[][] options;

  private final int[] bySize;

  // What is left to the boxes on the way, and the search itself.
  private final long[] load;
  private final long[] volume;
  private long side;
  private int moved;
  private int most;
  private int count;
  private final int[] who;
  private final int[][] where;
  private final double[] rest;
  private final int[] at;
  private final int[] bestAt;
  private double bestCost;
  private double credit;
  private boolean found;
  private boolean strict; // within all limits only
  private long nodes;
  private long nodeLimit;
  private long work;

  Repacking(StowProblem problem) {
    this.problem = problem;
    n = problem.boxCount;
    m = problem.placeCount;
    outside = m;
    cost = new double[n][];
    double range = 0;
    long weight = 1;
    for (int i = 0; i < n; i++) {
      cost[i] = Arrays.copyOf(problem.cost[i], m + 1);
      double low = Double.POSITIVE_INFINITY;
      double high = 0;
      for (double one : problem.cost[i]) {
        low = Math.min(low, one);
        high = one < Double.POSITIVE_INFINITY ? Math.max(high, one) : high;
      }
      range += high - low;
      cost[i][outside] = high;
      weight += problem.weightMg[i];
    }
    spread = Math.max(1e-6, range / Math.max(1, n));
    long widest = 1;
    for (long offset : problem.offsetUm) {
      widest = Math.max(widest, Math.abs(offset));
    }
    sidePenalty = PENALTY * spread / (weight * 1e-6 / Math.max(1, n) * (widest * 1e-6));
    for (double[] costs : cost) {
      costs[outside] += PENALTY * spread;
    }
    reduced = new double[n][m + 1];
    multiplier = new double[m][2];
    options = new int[n][m + 1];
    bySize = new int[n];
    load = new long[m + 1];
    volume = new long[m + 1];
    who = new int[n];
    where = new int[n][m + 1];
    rest = new double[n + 1];
    at = new int[n];
    bestAt = new int[n];
    multipliers(multiplier, 0, 0);
  }

  /**
   * Takes up other multipliers; any give a true bound.
   *
   * @param room by place: of a mm3 and of a mg, kg m each
   * @param ofSide of the side moment, positive for the upper limit
   * @param ofMove of a moved box, kg m
   */
  void multipliers(double[][] room, double ofSide, double ofMove) {
    sideMultiplier = Math.max(-sidePenalty, Math.min(sidePenalty, ofSide));
    moveMultiplier = Math.min(PENALTY * spread, ofMove);
    for (int j = 0; j < m; j++) {
      multiplier[j] = room[j].clone();
    }
    double[] size = new double[n];
    for (int i = 0; i < n; i++) {
      size[i] = 1e-15 * (problem.volumeMm3[i] + problem.weightMg[i]); // decides without multipliers
      for (int j = 0; j <= m; j++) {
        double use = 0;
        if (j < m) {
          use = room[j][0] * problem.volumeMm3[i] + room[j][1] * problem.weightMg[i];
          size[i] += use;
          use += sideMultiplier * 1e-12 * problem.weightMg[i] * problem.offsetUm[j];
        }
        reduced[i][j] = cost[i][j] + use + (j == problem.now[i] ? 0 : moveMultiplier);
        int b = j;
        for (; b > 0 && reduced[i][options[i][b - 1]] > reduced[i][j]; b--) {
          options[i][b] = options[i][b - 1];
        }
        options[i][b] = j;
      }
      int b = i;
      for (; b > 0 && size[bySize[b - 1]] < size[i]; b--) {
        bySize[b] = bySize[b - 1];
      }
      bySize[b] = i;
    }
  }

  /** Work done so far: branches looked at, and a share for each start. */
  long work() {
    return work;
  }

  /** Cost of a plan with penalties, kg m. */
  double penalised(int[] place, int mostMoves) {
    most = mostMoves;
    double sum = 0;
    side = 0;
    moved = 0;
    for (int i = 0; i < n; i++) {
      sum += cost[i][place[i]];
      stand(i, place[i]);
    }
    return sum + penalty();
  }

  private void stand(int box, int place) {
    side += place == outside ? 0 : problem.weightMg[box] * problem.offsetUm[place];
    moved += place == problem.now[box] ? 0 : 1;
  }

  private double penalty() {
    long beyond = Math.max(side - problem.sideHighest, problem.sideLowest - side);
    double sum = beyond > 0 ? spread + sidePenalty * 1e-12 * beyond : 0;
    return moved > most ? sum + PENALTY * spread * (moved - most) : sum;
  }

  /**
   * Packs the free boxes in the best way; changes the plan where that is found to cost, with
   * penalties, less than now and {@code rise} together.
   *
   * @param place place of each box, with room for all that stand in it
   * @param mostMoves most boxes that may move
   * @param rise what the plan may cost more, kg m
   * @param leaving a box that may not stay where it is; -1 for none
   * @param limit most branches looked at
   * @return whether it was changed
   */
  boolean repack(int[] place, boolean[] free, int mostMoves, double rise, int leaving, long limit) {
    double total = penalised(place, mostMoves);
    System.arraycopy(problem.loadRoomMg, 0, load, 0, m);
    System.arraycopy(problem.volumeRoomMm3, 0, volume, 0, m);
    load[outside] = StowProblem.UNLIMITED;
    volume[outside] = StowProblem.UNLIMITED;
    side = 0;
    moved = 0;
    count = 0;
    for (int i : bySize) {
      if (free[i]) {
        who[count++] = i;
      } else {
        total -= cost[i][place[i]];
        load[place[i]] -= problem.weightMg[i];
        volume[place[i]] -= problem.volumeMm3[i];
        stand(i, place[i]);
      }
    }
    bestCost = total + rise;
    strict = false;
    boolean possible = prepare(null, leaving, leaving < 0 ? -1 : place[leaving]);
    if (possible) {
      search(limit);
      for (int k = 0; k < count && found; k++) {
        place[who[k]] = bestAt[k];
      }
    }
    return possible && found;
  }

  /**
   * Looks for a plan within all limits that costs less.
   *
   * @param open the open places of each box
   * @param target what it must undercut, kg m
   * @param place takes up the plan where one is found
   * @param limit most branches looked at
   * @return whether all were looked at: there is no other plan
   */
  boolean complete(boolean[][] open, int mostMoves, double target, int[] place, long limit) {
    System.arraycopy(problem.loadRoomMg, 0, load, 0, m);
    System.arraycopy(problem.volumeRoomMm3, 0, volume, 0, m);
    side = 0;
    moved = 0;
    most = mostMoves;
    count = n;
    System.arraycopy(bySize, 0, who, 0, n);
    bestCost = target;
    strict = true;
    if (prepare(open, -1, -1)) {
      search(limit);
      for (int k = 0; k < count && found; k++) {
        place[who[k]] = bestAt[k];
      }
      return nodes <= nodeLimit;
    }
    found = false;
    return true;
  }

  /** Whether the last search found something. */
  boolean found() {
    return found;
  }

  /** Lists where each box may go, and the bounds of the boxes left; false where one cannot go. */
  private boolean prepare(boolean[][] open, int leaving, int from) {
    double limit = sideMultiplier >= 0 ? problem.sideHighest : problem.sideLowest;
    credit = sideMultiplier * 1e-12 * (limit - side) + moveMultiplier * (most - moved);
    for (int j = 0; j < m; j++) {
      credit += multiplier[j][0] > 0 ? multiplier[j][0] * volume[j] : 0;
      credit += multiplier[j][1] > 0 ? multiplier[j][1] * load[j] : 0;
    }
    work += 2L * n; // even where nothing can be tried: whoever counts work must come to an end
    rest[count] = 0;
    for (int k = count - 1; k >= 0; k--) {
      int box = who[k];
      int listed = 0;
      for (int j : options[box]) {
        boolean may = open == null || j < m && open[box][j];
        if (may
            && cost[box][j] < Double.POSITIVE_INFINITY
            && load[j] >= problem.weightMg[box]
            && volume[j] >= problem.volumeMm3[box]
            && (box != leaving || j != from)) {
          where[k][listed++] = j;
        }
      }
      if (listed == 0) {
        return false;
      }
      if (listed <= m) {
        where[k][listed] = -1;
      }
      rest[k] = rest[k + 1] + reduced[box][where[k][0]];
    }
    return true;
  }

  private void search(long limit) {
    found = false;
    nodes = 0;
    nodeLimit = limit;
    branch(0, -credit, 0);
    work += nodes;
  }

  private void branch(int k, double bound, double sum) {
    if (++nodes > nodeLimit) {
      return;
    }
    if (k == count) {
      double penalty = penalty();
      if (sum + penalty < bestCost && !(strict && penalty > 0)) {
        bestCost = sum + penalty;
        found = true;
        System.arraycopy(at, 0, bestAt, 0, count);
      }
      return;
    }
    int box = who[k];
    long w = problem.weightMg[box];
    long v = problem.volumeMm3[box];
    for (int j : where[k]) {
      if (j < 0 || bound + reduced[box][j] + rest[k + 1] >= bestCost || nodes > nodeLimit) {
        return;
      }
      if (load[j] >= w && volume[j] >= v) {
        load[j] -= w;
        volume[j] -= v;
        long sideBefore = side;
        int movedBefore = moved;
        stand(box, j);
        at[k] = j;
        branch(k + 1, bound + reduced[box][j], sum + cost[box][j]);
        side = sideBefore;
        moved = movedBefore;
        load[j] += w;
        volume[j] += v;
      }
    }
  }
}
