package sparewell.stow;

import java.util.Arrays;

/**
 * A plan under change: where each box stands, what that costs, what each place holds and by how
 * much limits are broken, carried along from change to change.
 */
final class TrialPlan {
  /** Cost of a move where all else is equal, kg m: fewer moves win ties. */
  private static final double TIE = 1e-6;

  /** Place of each box; to be read only. */
  final int[] place;

  private final StowProblem problem;
  private final Breach breach;
  private final double[][] cost;
  private final int[][] options;
  private final long[] load;
  private final long[] volume;
  private final double[] over;
  private long side;
  private double total;
  private double placesBroken;
  private double broken;

  /** The boxes away from where they stand now, and where each stands in that list. */
  private final int[] away;

  private final int[] awayAt;
  private int moved;

  TrialPlan(StowProblem problem, int mostMoves) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    this.problem = problem;
    breach = new Breach(problem, mostMoves);
    place = new int[n];
    cost = new double[n][m];
    options = new int[n][];
    away = new int[n];
    awayAt = new int[n];
    load = new long[m];
    volume = new long[m];
    over = new double[m];
    for (int i = 0; i < n; i++) {
      int count = 0;
      int[] open = new int[m];
      for (int j = 0; j < m; j++) {
        cost[i][j] = problem.momentKgM(i, j) + (j == problem.now[i] ? 0 : TIE);
        if (problem.allowed[i][j]) {
          open[count++] = j;
        }
      }
      options[i] = Arrays.copyOf(open, count);
    }
  }

  /** By how much the place of a box changes its cost, kg m, on average over the boxes. */
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

  /** The places that a box may stand in; to be read only. */
  int[] options(int box) {
    return options[box];
  }

  /** Sum of the boxes' costs: moment, kg m, and a trifle for each moved box. */
  double total() {
    return total;
  }

  /** By how much limits are broken, see {@link Breach}; exactly 0 where all are kept. */
  double broken() {
    return broken;
  }

  /** Boxes that stand elsewhere than now. */
  int moved() {
    return moved;
  }

  /** One of the boxes that stand elsewhere than now, {@code index} from 0 to {@link #moved}. */
  int away(int index) {
    return away[index];
  }

  /** Takes up a plan; a box that may not stand where that puts it goes to its cheapest place. */
  void start(int[] from) {
    Arrays.fill(load, 0);
    Arrays.fill(volume, 0);
    side = 0;
    moved = 0;
    total = 0;
    for (int i = 0; i < place.length; i++) {
      int at = problem.allowed[i][from[i]] ? from[i] : cheapest(i);
      place[i] = at;
      load[at] += problem.weightMg[i];
      volume[at] += problem.volumeMm3[i];
      side += problem.weightMg[i] * problem.offsetUm[at];
      total += cost[i][at];
      if (at != problem.now[i]) {
        awayAt[i] = moved;
        away[moved++] = i;
      }
    }
    placesBroken = 0;
    for (int j = 0; j < over.length; j++) {
      over[j] = breach.ofPlace(j, load[j], volume[j]);
      placesBroken += over[j];
    }
    broken = breach.ofPlan(placesBroken, side, moved);
  }

  private int cheapest(int box) {
    int at = options[box][0];
    for (int option : options[box]) {
      at = cost[box][option] < cost[box][at] ? option : at;
    }
    return at;
  }

  /**
   * Two or three boxes (b or c may be a again) change place, if that raises cost and priced breach
   * by no more than {@code rise}.
   *
   * @param penalty price of a breach of 1, kg m
   * @return whether they did; where not, all is as before
   */
  boolean change(int a, int toA, int b, int toB, int c, int toC, double penalty, double rise) {
    if (!problem.allowed[a][toA] || !problem.allowed[b][toB] || !problem.allowed[c][toC]) {
      return false;
    }
    int fromA = place[a];
    int fromB = place[b];
    int fromC = place[c];
    double change = cost[a][toA] - cost[a][fromA];
    if (b != a) {
      change += cost[b][toB] - cost[b][fromB];
    }
    if (c != a) {
      change += cost[c][toC] - cost[c][fromC];
    }
    if (change - penalty * broken > rise) {
      return false;
    }
    long sideBefore = side;
    double overFromA = over[fromA];
    double overToA = over[toA];
    double overFromB = over[fromB];
    double overToB = over[toB];
    double brokenBefore = broken;
    shift(a, fromA, toA);
    if (b != a) {
      shift(b, fromB, toB);
    }
    if (c != a) {
      shift(c, fromC, toC);
    }
    double places = placesBroken + renewed(fromA) + renewed(toA);
    if (b != a && toB != fromA) {
      places += renewed(fromB) + renewed(toB);
    }
    places = Breach.withoutRounding(places);
    int movedThen = moved + home(a, fromA) - home(a, toA);
    if (b != a) {
      movedThen += home(b, fromB) - home(b, toB);
    }
    if (c != a) {
      movedThen += home(c, fromC) - home(c, toC);
    }
    double brokenThen = breach.ofPlan(places, side, movedThen);
    if (change + penalty * (brokenThen - brokenBefore) > rise) {
      shift(a, toA, fromA);
      if (b != a) {
        shift(b, toB, fromB);
      }
      if (c != a) {
        shift(c, toC, fromC);
      }
      side = sideBefore;
      over[fromA] = overFromA;
      over[toA] = overToA;
      over[fromB] = overFromB;
      over[toB] = overToB;
      return false;
    }
    put(a, toA);
    put(b, toB);
    put(c, toC);
    total += change;
    placesBroken = places;
    broken = brokenThen;
    return true;
  }

  private void shift(int box, int from, int to) {
    long w = problem.weightMg[box];
    long v = problem.volumeMm3[box];
    load[from] -= w;
    volume[from] -= v;
    load[to] += w;
    volume[to] += v;
    side += w * (problem.offsetUm[to] - problem.offsetUm[from]);
  }

  private double renewed(int j) {
    double before = over[j];
    over[j] = breach.ofPlace(j, load[j], volume[j]);
    return over[j] - before;
  }

  private int home(int box, int at) {
    return at == problem.now[box] ? 1 : 0;
  }

  private void put(int box, int to) {
    int from = place[box];
    if (from == to) {
      return;
    }
    place[box] = to;
    if (from == problem.now[box]) {
      awayAt[box] = moved;
      away[moved++] = box;
    } else if (to == problem.now[box]) {
      int last = away[--moved];
      away[awayAt[box]] = last;
      awayAt[last] = awayAt[box];
    }
  }
}
