package sparewell.stow;

import java.util.Arrays;

/**
 * The best plans found so far, one for each number of moved boxes, and simulated annealing to find
 * better ones: single boxes change place, pairs swap, three rotate, and where moves are scarce one
 * box goes home as another sets out. Broken limits are allowed on the way at a price that rises
 * while they last. Seeded and counted in steps, so that the same problem gives the same plans.
 *
 * @see "S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Optimization by simulated annealing, Science
 *     220 (1983), from memory"
 */
final class Plans {
  /**
   * What a limit costs as soon as it is broken, in average boxes, so that no breach is too small.
   */
  private static final double BROKEN = 0.05;

  /** What a move too many costs: less than a box that stands in the wrong place. */
  private static final double MOVE = 0.7;

  /** -ln of evenly spread chances: the rise that is accepted, in temperatures. */
  private static final double[] ACCEPTED = accepted();

  private final StowProblem problem;
  private final int n;
  private final double[][] cost;
  private final int[][] options;

  /** By how much the place of a box changes its cost, kg m; temperatures are shares of it. */
  private final double spread;

  private final double loadUnit;
  private final double volumeUnit;
  private final double sideUnit;

  // The plan under change: place of each box, what each place holds, by how much limits are broken.
  private final int[] place;
  private final long[] load;
  private final long[] volume;
  private final double[] over;
  private long side;
  private int moved;
  private double total;
  private double placesBroken;
  private double broken;
  private int mostMoves;

  // The change proposed: up to three boxes, where they go and where they come from.
  private final int[] who = new int[3];
  private final int[] to = new int[3];
  private final int[] from = new int[3];
  private int count;

  /** By number of moved boxes: the best plan and its cost, kg m; infinite where there is none. */
  private final int[][] best;

  private final double[] bestCost;
  private final int[] closest;
  private double closestBroken = Double.POSITIVE_INFINITY;

  Plans(StowProblem problem) {
    this.problem = problem;
    n = problem.boxCount;
    int m = problem.placeCount;
    cost = problem.cost;
    options = new int[n][];
    double range = 0;
    for (int i = 0; i < n; i++) {
      int[] open = new int[m];
      int opened = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < m; j++) {
        if (problem.allowed(i, j)) {
          open[opened++] = j;
          low = Math.min(low, cost[i][j]);
          high = Math.max(high, cost[i][j]);
        }
      }
      options[i] = Arrays.copyOf(open, opened);
      range += high - low;
    }
    int boxes = Math.max(1, n);
    spread = Math.max(1e-6, range / boxes);
    long widest = Arrays.stream(problem.offsetUm).map(Math::abs).max().orElse(0);
    loadUnit = 1 / Math.max(1, Arrays.stream(problem.weightMg).sum() / (double) boxes);
    volumeUnit = 1 / Math.max(1, Arrays.stream(problem.volumeMm3).sum() / (double) boxes);
    sideUnit = loadUnit / Math.max(1, widest);
    place = new int[n];
    load = new long[m];
    volume = new long[m];
    over = new double[m];
    best = new int[n + 1][];
    bestCost = new double[n + 1];
    Arrays.fill(bestCost, Double.POSITIVE_INFINITY);
    closest = new int[n];
  }

  private static double[] accepted() {
    double[] rises = new double[256];
    for (int i = 0; i < rises.length; i++) {
      rises[i] = -Math.log((i + 0.5) / rises.length);
    }
    return rises;
  }

  /** Number of moves of the best plan with at most that many, of equals the fewest; -1: none. */
  int bestMoves(int most) {
    int found = -1;
    for (int k = 0; k <= Math.min(most, n); k++) {
      if (found < 0
          ? best[k] != null
          : bestCost[k] < bestCost[found] - StowSolver.tolerance(bestCost[found])) {
        found = k;
      }
    }
    return found;
  }

  /** Number of moves of the plan that costs least with a price on each move; -1 without a plan. */
  int worthwhile(double price) {
    int found = -1;
    for (int k = 0; k <= n; k++) {
      double better = found < 0 ? 1 : bestCost[found] - bestCost[k] - price * (k - found);
      if (best[k] != null && better > StowSolver.tolerance(bestCost[k])) {
        found = k;
      }
    }
    return found;
  }

  /** Cost of the best plan with at most that many moves, kg m; infinite where there is none. */
  double cost(int most) {
    int moves = bestMoves(most);
    return moves < 0 ? Double.POSITIVE_INFINITY : bestCost[moves];
  }

  /** The best plan with at most that many moves; empty where there is none. */
  int[] plan(int most) {
    int moves = bestMoves(most);
    return moves < 0 ? new int[0] : best[moves].clone();
  }

  /** The plan that came closest to keeping every limit; of no meaning where one keeps them. */
  int[] closest() {
    return closest.clone();
  }

  /** Offers a plan made elsewhere, whether or not it keeps the limits. */
  void offer(int[] candidate) {
    mostMoves = n;
    start(candidate);
  }

  private void keep() {
    if (broken > 0) {
      if (broken < closestBroken && moved <= mostMoves) {
        closestBroken = broken;
        System.arraycopy(place, 0, closest, 0, n);
      }
    } else if (total < bestCost[moved] - 1e-10) {
      best[moved] = place.clone();
      bestCost[moved] = problem.cost(place);
    }
  }

  /**
   * One cooling.
   *
   * @param start the plan to start at
   * @param most most boxes that may move
   * @param steps changes proposed
   * @param hotShare temperature at the start, as a share of what a place usually changes; at the
   *     end it is 0.002
   * @param seed of the proposals
   */
  void anneal(int[] start, int most, long steps, double hotShare, long seed) {
    mostMoves = most;
    start(start);
    if (n == 0) {
      return;
    }
    long random = seed * 0x9E3779B97F4A7C15L + 0x1234567L;
    double penalty = spread * 3;
    double temperature = spread * hotShare;
    double cooling = Math.pow(spread * 0.002 / temperature, 1.0 / Math.max(1, steps / 64));
    int cleanSince = 0;
    for (long at = 0; at < steps; at++) {
      if ((at & 63) == 63) {
        temperature *= cooling;
        if (broken > 0) {
          penalty = Math.min(penalty * 1.002, spread * 200);
          cleanSince = 0;
        } else if (++cleanSince > 4) {
          penalty = Math.max(penalty * 0.998, spread * 0.1);
        }
      }
      random = next(random); // its fields are the parts of one proposal
      propose(random);
      if (count > 0 && change(penalty, temperature * ACCEPTED[(int) (random & 0xFF)])) {
        keep();
      }
    }
  }

  /** The random number after that one: xorshift64 (Marsaglia 2003); every number but 0 comes up. */
  private static long next(long random) {
    long next = random ^ random << 13;
    next ^= next >>> 7;
    return next ^ next << 17;
  }

  private void propose(long random) {
    int dice = (int) (random >>> 56);
    int a = (int) ((random >>> 40 & 0xFFFF) * n >>> 16);
    int b = (int) ((random >>> 24 & 0xFFFF) * n >>> 16);
    int third = (int) (random >>> 8 & 0xFFFF);
    boolean scarce = moved >= mostMoves && moved > 0;
    if (scarce && (dice & 1) == 0) {
      a = movedFrom(a);
    }
    count = 0;
    if (dice < 90) {
      int there = dice < 12 ? problem.now[a] : options[a][third * options[a].length >>> 16];
      if (there == place[a]) {
        return;
      }
      add(a, there);
      if (scarce && place[a] == problem.now[a]) {
        b = movedFrom(b);
        add(b, problem.now[b]);
      }
    } else if (place[a] != place[b]) {
      int c = dice < 218 ? a : third * n >>> 16;
      if (c == a) {
        add(a, place[b]);
        add(b, place[a]);
      } else if (place[c] != place[a] && place[c] != place[b]) {
        add(a, place[b]);
        add(b, place[c]);
        add(c, place[a]);
      }
    }
  }

  /** That box, or the first after it that stands elsewhere than now; there is one. */
  private int movedFrom(int box) {
    int found = box;
    while (place[found] == problem.now[found]) {
      found = found + 1 == n ? 0 : found + 1;
    }
    return found;
  }

  private void add(int box, int there) {
    who[count] = box;
    from[count] = place[box];
    to[count++] = there;
  }

  /** Makes the proposed change, if that raises cost and priced breach by no more than that. */
  private boolean change(double penalty, double rise) {
    double dearer = 0;
    for (int i = 0; i < count; i++) {
      dearer += cost[who[i]][to[i]] - cost[who[i]][from[i]];
    }
    if (!(dearer - penalty * broken <= rise)) {
      return false; // too dear even if it mended every breach
    }
    double placesBefore = placesBroken;
    for (int i = 0; i < count; i++) {
      shift(who[i], to[i]);
    }
    settle();
    double then = brokenInAll();
    if (dearer + penalty * (then - broken) > rise) {
      for (int i = 0; i < count; i++) {
        shift(who[i], from[i]);
      }
      settle();
      placesBroken = placesBefore;
      return false;
    }
    total += dearer;
    broken = then;
    return true;
  }

  private void shift(int box, int there) {
    int here = place[box];
    long w = problem.weightMg[box];
    long v = problem.volumeMm3[box];
    load[here] -= w;
    volume[here] -= v;
    load[there] += w;
    volume[there] += v;
    side += w * (problem.offsetUm[there] - problem.offsetUm[here]);
    moved += (here == problem.now[box] ? 1 : 0) - (there == problem.now[box] ? 1 : 0);
    place[box] = there;
  }

  /** Judges the places anew that the change touches. */
  private void settle() {
    for (int i = 0; i < count; i++) {
      judge(from[i]);
      judge(to[i]);
    }
    if (placesBroken < BROKEN / 2) {
      placesBroken = 0; // what rounding left: a place over costs more
    }
  }

  private void judge(int at) {
    double found = 0;
    if (load[at] > problem.loadRoomMg[at]) {
      found += (load[at] - problem.loadRoomMg[at]) * loadUnit + BROKEN;
    }
    if (volume[at] > problem.volumeRoomMm3[at]) {
      found += (volume[at] - problem.volumeRoomMm3[at]) * volumeUnit + BROKEN;
    }
    placesBroken += found - over[at];
    over[at] = found;
  }

  /** By how much limits are broken, in average boxes; 0 where all are kept. */
  private double brokenInAll() {
    double sum = placesBroken;
    if (moved > mostMoves) {
      sum += MOVE * (moved - mostMoves);
    }
    long beyond = Math.max(side - problem.sideHighest, problem.sideLowest - side);
    return beyond > 0 ? sum + beyond * sideUnit + BROKEN : sum;
  }

  /** Takes up a plan; a box that may not stand where that puts it goes to its cheapest place. */
  private void start(int[] plan) {
    Arrays.fill(load, 0);
    Arrays.fill(volume, 0);
    Arrays.fill(over, 0);
    side = 0;
    moved = 0;
    total = 0;
    for (int i = 0; i < n; i++) {
      int at = plan[i];
      if (!problem.allowed(i, at)) {
        at = options[i][0];
        for (int option : options[i]) {
          at = cost[i][option] < cost[i][at] ? option : at;
        }
      }
      place[i] = at;
      load[at] += problem.weightMg[i];
      volume[at] += problem.volumeMm3[i];
      side += problem.weightMg[i] * problem.offsetUm[at];
      moved += at == problem.now[i] ? 0 : 1;
      total += cost[i][at];
    }
    placesBroken = 0;
    for (int j = 0; j < over.length; j++) {
      judge(j);
    }
    broken = brokenInAll();
    keep();
  }
}
