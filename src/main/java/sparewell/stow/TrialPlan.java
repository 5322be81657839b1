package sparewell.stow;

import java.util.Arrays;

/**
 * A plan under change: where each box stands, what that costs, what each place holds and by how
 * much limits are broken, carried along from change to change.
 */
final class TrialPlan {
  /** Place of each box; to be read only. */
  final int[] place;

  private final StowProblem problem;
  private final Breach breach;
  private final long[] weight;
  private final long[] size;
  private final long[] offset;
  private final PlaceCosts costs;
  private final MovedBoxes moved;
  private final double[][] cost;
  private final long[] load;
  private final long[] volume;
  private final double[] over;
  private long side;
  private double total;
  private double placesBroken;
  private double broken;

  TrialPlan(StowProblem problem, int mostMoves) {
    this.problem = problem;
    breach = new Breach(problem, mostMoves);
    weight = problem.weightMg;
    size = problem.volumeMm3;
    offset = problem.offsetUm;
    costs = new PlaceCosts(problem);
    cost = costs.table();
    moved = new MovedBoxes(problem.now);
    place = new int[problem.boxCount];
    load = new long[problem.placeCount];
    volume = new long[problem.placeCount];
    over = new double[problem.placeCount];
  }

  /** What each box costs in each place. */
  PlaceCosts costs() {
    return costs;
  }

  /** The boxes that stand elsewhere than now. */
  MovedBoxes moved() {
    return moved;
  }

  /** Sum of the boxes' costs: moment, kg m, and a trifle for each moved box. */
  double total() {
    return total;
  }

  /** By how much limits are broken, see {@link Breach}; exactly 0 where all are kept. */
  double broken() {
    return broken;
  }

  /** Takes up a plan; a box that may not stand where that puts it goes to its cheapest place. */
  void start(int[] from) {
    Arrays.fill(load, 0);
    Arrays.fill(volume, 0);
    side = 0;
    moved.clear();
    total = 0;
    for (int i = 0; i < place.length; i++) {
      int at = problem.allowed[i][from[i]] ? from[i] : costs.cheapest(i);
      place[i] = at;
      load[at] += weight[i];
      volume[at] += size[i];
      side += weight[i] * offset[at];
      total += cost[i][at];
      moved.step(i, problem.now[i], at);
    }
    placesBroken = 0;
    for (int j = 0; j < over.length; j++) {
      over[j] = breach.ofPlace(j, load[j], volume[j]);
      placesBroken += over[j];
    }
    broken = breach.ofPlan(placesBroken, side, moved.count());
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
    if (!taken(change, places, sideThen, moved.change(box, from, to), penalty, rise)) {
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
    int more = moved.change(a, p, q) + moved.change(b, q, p);
    if (!taken(change, places, sideThen, more, penalty, rise)) {
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
    int more = moved.change(a, fromA, toA) + moved.change(b, fromB, toB);
    if (c != a) {
      shift(c, fromC, toC);
      more += moved.change(c, fromC, toC);
    }
    double places = placesBroken + worse(fromA) + worse(toA);
    places += fromB == fromA || fromB == toA ? 0 : worse(fromB);
    places += toB == fromA || toB == toA ? 0 : worse(toB);
    if (!taken(change, places, side, more, penalty, rise)) {
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
      double change, double places, long sideThen, int more, double penalty, double rise) {
    double left = Breach.withoutRounding(places);
    double brokenThen = breach.ofPlan(left, sideThen, moved.count() + more);
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

  private void put(int box, int to) {
    moved.step(box, place[box], to);
    place[box] = to;
  }
}
