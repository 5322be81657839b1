package sparewell.stow;

import java.util.Arrays;

/**
 * Branch and bound over the places of some boxes, the others staying: depth-first, the biggest box
 * first, its place of least reduced cost first. Lower bound of a branch: the least reduced costs of
 * the boxes left, less what all room that was free is worth by its multipliers.
 *
 * <p>In local search a box may also stand {@link #outside}, and the side limit and the number of
 * moves may be exceeded, each at a constraint-violation penalty. A few heavy boxes among many may
 * gain more than it takes, so a search that completes plans accepts none that exceeds a limit.
 */
final class Repacking {
  /** Penalties in units of what the place of a box usually changes. */
  private static final double PENALTY = 3;

  private final StowProblem problem;
  private final int n;
  private final int m;

  /** Mean change of the cost by the place of a box, kg m. */
  final double spread;

  /** Place number of a box that stands in no compartment. */
  final int outside;

  /** By box and place, the last place being outside. */
  private final double[][] cost;

  private final double[][] reduced;
  private final long[] weight;
  private final long[] size;
  private final int[] now;

  /** By place, the last being outside. */
  private final long[] offset;

  private final double perSideMomentOver;

  // The multipliers in force.
  private final double[] perVolume;
  private final double[] perLoad;
  private double perSideMoment;
  private double perMove;

  /** By box: all places, least reduced cost first; and all boxes, the biggest first. */
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
  private boolean found;
  private boolean strict; // within all limits only
  private long branches;
  private long branchLimit;
  private long work;

  Repacking(StowProblem problem) {
    this.problem = problem;
    n = problem.boxCount();
    m = problem.placeCount();
    outside = m;
    cost = new double[n][];
    double range = 0;
    for (int i = 0; i < n; i++) {
      cost[i] = Arrays.copyOf(problem.cost()[i], m + 1);
      var finite = Arrays.stream(problem.cost()[i]).filter(one -> one < Double.POSITIVE_INFINITY);
      var known = finite.summaryStatistics();
      range += known.getMax() - known.getMin();
      cost[i][outside] = known.getMax();
    }
    spread = Math.max(1e-6, range / Math.max(1, n));
    for (double[] costs : cost) {
      costs[outside] += PENALTY * spread;
    }
    double mean = Math.max(1, Arrays.stream(problem.weightMg()).average().orElse(1));
    long widest = Arrays.stream(problem.offsetUm()).map(Math::abs).max().orElse(0);
    perSideMomentOver = PENALTY * spread / (mean * Math.max(1, widest));
    reduced = new double[n][m + 1];
    weight = problem.weightMg();
    size = problem.volumeMm3();
    now = problem.now();
    offset = Arrays.copyOf(problem.offsetUm(), m + 1);
    perVolume = new double[m];
    perLoad = new double[m];
    options = new int[n][m + 1];
    bySize = new int[n];
    load = new long[m + 1];
    volume = new long[m + 1];
    who = new int[n];
    where = new int[n][m + 1];
    rest = new double[n + 1];
    at = new int[n];
    bestAt = new int[n];
    use(new LimitRelaxation(problem));
  }

  /** Takes up the multipliers in force there; any give a true bound. */
  void use(LimitRelaxation of) {
    double mostSide = perSideMomentOver;
    perSideMoment = Math.max(-mostSide, Math.min(mostSide, of.perSideMoment()));
    perMove = Math.min(PENALTY * spread, of.perMove());
    for (int j = 0; j < m; j++) {
      perVolume[j] = of.perVolume(j);
      perLoad[j] = of.perLoad(j);
    }
    double[] bulk = new double[n];
    for (int i = 0; i < n; i++) {
      bulk[i] =
          1e-15 * (problem.volumeMm3()[i] + problem.weightMg()[i]); // decides where room is free
      for (int j = 0; j <= m; j++) {
        double use = 0;
        if (j < m) {
          use = perVolume[j] * problem.volumeMm3()[i] + perLoad[j] * problem.weightMg()[i];
          bulk[i] += use;
          use += perSideMoment * problem.weightMg()[i] * problem.offsetUm()[j];
        }
        reduced[i][j] = cost[i][j] + use + (j == problem.now()[i] ? 0 : perMove);
        int b = j;
        for (; b > 0 && reduced[i][options[i][b - 1]] > reduced[i][j]; b--) {
          options[i][b] = options[i][b - 1];
        }
        options[i][b] = j;
      }
      int b = i;
      for (; b > 0 && bulk[bySize[b - 1]] < bulk[i]; b--) {
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
    clear(mostMoves);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += cost[i][place[i]];
      stand(i, place[i]);
    }
    return sum + penalty(side, moved);
  }

  /** Nothing stands anywhere. */
  private void clear(int mostMoves) {
    System.arraycopy(problem.loadRoomMg(), 0, load, 0, m);
    System.arraycopy(problem.volumeRoomMm3(), 0, volume, 0, m);
    load[outside] = StowProblem.UNLIMITED;
    volume[outside] = StowProblem.UNLIMITED;
    side = 0;
    moved = 0;
    count = 0;
    most = mostMoves;
  }

  private void stand(int box, int place) {
    load[place] -= weight[box];
    volume[place] -= size[box];
    side += weight[box] * offset[place];
    moved += place == now[box] ? 0 : 1;
  }

  private double penalty(long side, int moved) {
    long beyond = Math.max(side - problem.sideHighest(), problem.sideLowest() - side);
    double sum = beyond > 0 ? spread + perSideMomentOver * beyond : 0;
    return moved > most ? sum + PENALTY * spread * (moved - most) : sum;
  }

  /**
   * Packs the free boxes in the best way; changes the plan where that is found to cost, with
   * penalties, less than now and {@code rise} together.
   *
   * @param place place of each box, with room for all that stand in it
   * @param mostMoves most boxes that may move
   * @param rise what the plan may cost more, kg m
   * @param leaving a free box that may not stay where it is
   * @param limit most branches looked at
   * @return whether it was changed
   */
  boolean repack(int[] place, boolean[] free, int mostMoves, double rise, int leaving, long limit) {
    double total = penalised(place, mostMoves);
    clear(mostMoves);
    for (int i : bySize) {
      if (free[i]) {
        who[count++] = i;
      } else {
        total -= cost[i][place[i]];
        stand(i, place[i]);
      }
    }
    strict = false;
    bestCost = total + rise;
    search(null, leaving, place[leaving], limit);
    take(place);
    return found;
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
    clear(mostMoves);
    count = n;
    System.arraycopy(bySize, 0, who, 0, n);
    strict = true;
    bestCost = target;
    search(open, -1, -1, limit);
    take(place);
    return branches <= branchLimit;
  }

  /** True if the last search found something. */
  boolean found() {
    return found;
  }

  private void take(int[] place) {
    for (int k = 0; k < count && found; k++) {
      place[who[k]] = bestAt[k];
    }
  }

  private void search(boolean[][] open, int leaving, int from, long limit) {
    found = false;
    branches = 0;
    branchLimit = limit;
    double sideLimit = perSideMoment >= 0 ? problem.sideHighest() : problem.sideLowest();
    double free = perSideMoment * (sideLimit - side) + perMove * (most - moved);
    for (int j = 0; j < m; j++) {
      free += perVolume[j] > 0 ? perVolume[j] * volume[j] : 0;
      free += perLoad[j] > 0 ? perLoad[j] * load[j] : 0;
    }
    work += 2L * n; // even where nothing can be tried: whoever counts work must come to an end
    if (list(open, leaving, from)) {
      branch(0, -free, 0, side, moved);
      work += branches;
    }
  }

  /** Lists where each box may go, and the bounds of the boxes left; false where one cannot go. */
  private boolean list(boolean[][] open, int leaving, int from) {
    rest[count] = 0;
    for (int k = count - 1; k >= 0; k--) {
      int box = who[k];
      int listed = 0;
      for (int j : options[box]) {
        boolean may = open == null || j < m && open[box][j];
        if (may
            && cost[box][j] < Double.POSITIVE_INFINITY
            && load[j] >= problem.weightMg()[box]
            && volume[j] >= problem.volumeMm3()[box]
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

  private void branch(int k, double bound, double sum, long side, int moved) {
    if (++branches > branchLimit) {
      return;
    }
    if (k == count) {
      double penalty = penalty(side, moved);
      if (sum + penalty < bestCost && !(strict && penalty > 0)) {
        bestCost = sum + penalty;
        found = true;
        System.arraycopy(at, 0, bestAt, 0, count);
      }
      return;
    }
    int box = who[k];
    long w = weight[box];
    long v = size[box];
    double[] costs = cost[box];
    double[] reducedCosts = reduced[box];
    double after = bound + rest[k + 1];
    for (int j : where[k]) {
      if (j < 0 || after + reducedCosts[j] >= bestCost || branches > branchLimit) {
        return;
      }
      boolean may = !strict || moved < most || j == now[box];
      if (may && load[j] >= w && volume[j] >= v) {
        load[j] -= w;
        volume[j] -= v;
        at[k] = j;
        branch(
            k + 1,
            bound + reducedCosts[j],
            sum + costs[j],
            side + w * offset[j],
            j == now[box] ? moved : moved + 1);
        load[j] += w;
        volume[j] += v;
      }
    }
  }
}
