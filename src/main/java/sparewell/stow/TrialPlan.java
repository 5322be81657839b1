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
  private final long[] weight;
  private final long[] size;
  private final long[] offset;
  private final int[] now;
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
    weight = problem.weightMg;
    size = problem.volumeMm3;
    offset = problem.offsetUm;
    now = problem.now;
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
        cost[i][j] = Double.POSITIVE_INFINITY;
        if (problem.allowed[i][j]) {
          cost[i][j] = problem.momentKgM(i, j) + (j == now[i] ? 0 : TIE);
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
      load[at] += weight[i];
      volume[at] += size[i];
      side += weight[i] * offset[at];
      total += cost[i][at];
      if (at != now[i]) {
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
   * One box goes elsewhere, if that raises cost and priced breach by no more than {@code rise}.
   *
   * @param to where it does not stand yet
   * @param penalty price of a breach of 1, kg m
   * @param rise kg m
   * @return whether it did; where not, all is as before
   */
  boolean move(int box, int to, double penalty, double rise) {
    int from = place[box];
    double change = cost[box][to] - cost[box][from];
    if (change - penalty * broken > rise) {
      return false; // too dear even if it mended every breach
    }
    long w = weight[box];
    long v = size[box];
    double overFrom = breach.ofPlace(from, load[from] - w, volume[from] - v);
    double overTo = breach.ofPlace(to, load[to] + w, volume[to] + v);
    double places = placesBroken + (overFrom - over[from]) + (overTo - over[to]);
    long sideThen = side + w * (offset[to] - offset[from]);
    if (!taken(change, places, sideThen, moved + away(box, to), penalty, rise)) {
      return false;
    }
    side = sideThen;
    fill(from, -w, -v, overFrom);
    fill(to, w, v, overTo);
    put(box, to);
    return true;
  }

  /** Two boxes in different places change places, on the terms of {@link #move}. */
  boolean swap(int a, int b, double penalty, double rise) {
    int p = place[a];
    int q = place[b];
    double change = cost[a][q] - cost[a][p] + (cost[b][p] - cost[b][q]);
    if (change - penalty * broken > rise) {
      return false;
    }
    long w = weight[a] - weight[b];
    long v = size[a] - size[b];
    double overP = breach.ofPlace(p, load[p] - w, volume[p] - v);
    double overQ = breach.ofPlace(q, load[q] + w, volume[q] + v);
    double places = placesBroken + (overP - over[p]) + (overQ - over[q]);
    long sideThen = side + w * (offset[q] - offset[p]);
    int movedThen = moved + away(a, q) + away(b, p);
    if (!taken(change, places, sideThen, movedThen, penalty, rise)) {
      return false;
    }
    side = sideThen;
    fill(p, -w, -v, overP);
    fill(q, w, v, overQ);
    put(a, q);
    put(b, p);
    return true;
  }

  /**
   * Two boxes, or three, go elsewhere at once, on the terms of {@link #move}.
   *
   * @param c {@code a} again with the same place where it is two; the place of a third is {@code
   *     a}'s old one
   */
  boolean together(int a, int toA, int b, int toB, int c, int toC, double penalty, double rise) {
    int fromA = place[a];
    int fromB = place[b];
    int fromC = place[c];
    double change = cost[a][toA] - cost[a][fromA] + (cost[b][toB] - cost[b][fromB]);
    change += c == a ? 0 : cost[c][toC] - cost[c][fromC];
    if (change - penalty * broken > rise) {
      return false;
    }
    long sideBefore = side;
    shift(a, fromA, toA);
    shift(b, fromB, toB);
    int movedThen = moved + away(a, toA) + away(b, toB);
    if (c != a) {
      shift(c, fromC, toC);
      movedThen += away(c, toC);
    }
    double places = placesBroken + worse(fromA) + worse(toA);
    places += fromB == fromA || fromB == toA ? 0 : worse(fromB);
    places += toB == fromA || toB == toA ? 0 : worse(toB);
    if (!taken(change, places, side, movedThen, penalty, rise)) {
      shift(a, toA, fromA);
      shift(b, toB, fromB);
      if (c != a) {
        shift(c, toC, fromC);
      }
      side = sideBefore;
      return false;
    }
    for (int at : new int[] {fromA, toA, fromB, toB}) {
      over[at] = breach.ofPlace(at, load[at], volume[at]);
    }
    put(a, toA);
    put(b, toB);
    put(c, toC);
    return true;
  }

  /** Takes the change up into the sums, if that does not cost more than {@code rise}. */
  private boolean taken(
      double change, double places, long sideThen, int movedThen, double penalty, double rise) {
    double left = Breach.withoutRounding(places);
    double brokenThen = breach.ofPlan(left, sideThen, movedThen);
    if (change + penalty * (brokenThen - broken) > rise) {
      return false;
    }
    total += change;
    placesBroken = left;
    broken = brokenThen;
    return true;
  }

  private void fill(int at, long w, long v, double overThen) {
    load[at] += w;
    volume[at] += v;
    over[at] = overThen;
  }

  private void shift(int box, int from, int to) {
    long w = weight[box];
    long v = size[box];
    load[from] -= w;
    volume[from] -= v;
    load[to] += w;
    volume[to] += v;
    side += w * (offset[to] - offset[from]);
  }

  private double worse(int at) {
    return breach.ofPlace(at, load[at], volume[at]) - over[at];
  }

  /** What going there adds to the number of moved boxes: 1, 0 or, on the way home, -1. */
  private int away(int box, int to) {
    return (place[box] == now[box] ? 1 : 0) - (to == now[box] ? 1 : 0);
  }

  private void put(int box, int to) {
    int before = away(box, to);
    place[box] = to;
    if (before > 0) {
      awayAt[box] = moved;
      away[moved++] = box;
    } else if (before < 0) {
      int last = away[--moved];
      away[awayAt[box]] = last;
      awayAt[last] = awayAt[box];
    }
  }
}
