package sparewell.stow;

import java.util.Arrays;

/**
 * Looks for good plans by simulated annealing: single boxes change place, pairs swap, three rotate,
 * and where moves are scarce one box goes home as another sets out. Broken limits are allowed on
 * the way at a price that rises while they last. Seeded and counted in steps, so that the same
 * problem gives the same plan.
 *
 * @see "S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Optimization by simulated annealing, Science
 *     220 (1983), from memory"
 */
final class Annealing {
  /** Cost of a move where all else is equal, kg m: fewer moves win ties. */
  static final double TIE = 1e-6;

  /** What a limit costs as soon as it is broken, in average boxes. */
  private static final double BROKEN = 0.05;

  /** -ln of evenly spread chances: the rise that is accepted, in temperatures. */
  private static final double[] ACCEPTED = accepted();

  private final StowProblem problem;
  private final int mostMoves;
  private final int n;
  private final int m;
  private final double[][] cost;
  private final int[][] options;
  private final int[] place;
  private final long[] load;
  private final long[] volume;
  private final double[] over;
  private long side;
  private double total;
  private double placesBroken;
  private double broken;
  private final double volumeUnit;
  private final double loadUnit;
  private final double sideUnit;
  private final double spread;
  private double penalty;

  /** The boxes away from where they stand now, and where each stands in that list. */
  private final int[] away;

  private final int[] awayAt;
  private int moved;

  private final int[] best;
  private double bestTotal = Double.POSITIVE_INFINITY;
  private final int[] closest;
  private double closestBroken = Double.POSITIVE_INFINITY;

  Annealing(StowProblem problem, int mostMoves) {
    this.problem = problem;
    this.mostMoves = mostMoves < 0 ? Integer.MAX_VALUE : mostMoves;
    n = problem.boxCount;
    m = problem.placeCount;
    cost = new double[n][m];
    options = new int[n][];
    place = new int[n];
    away = new int[n];
    awayAt = new int[n];
    best = new int[n];
    closest = new int[n];
    load = new long[m];
    volume = new long[m];
    over = new double[m];
    double loads = 0;
    double volumes = 0;
    double range = 0;
    double widest = 0;
    for (int j = 0; j < m; j++) {
      widest = Math.max(widest, Math.abs((double) problem.offsetUm[j]));
    }
    for (int i = 0; i < n; i++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      int count = 0;
      options[i] = new int[m];
      for (int j = 0; j < m; j++) {
        cost[i][j] =
            problem.weightMg[i] * 1e-6 * (problem.stationUm[j] * 1e-6)
                + (j == problem.now[i] ? 0 : TIE);
        if (problem.allowed[i][j]) {
          low = Math.min(low, cost[i][j]);
          high = Math.max(high, cost[i][j]);
          options[i][count++] = j;
        }
      }
      options[i] = Arrays.copyOf(options[i], count);
      loads += problem.weightMg[i];
      volumes += problem.volumeMm3[i];
      range += high - low;
    }
    loadUnit = 1 / Math.max(1, loads / Math.max(1, n));
    volumeUnit = 1 / Math.max(1, volumes / Math.max(1, n));
    sideUnit = loadUnit / Math.max(1, widest);
    spread = Math.max(1e-6, range / Math.max(1, n));
  }

  private static double[] accepted() {
    double[] rises = new double[256];
    for (int i = 0; i < rises.length; i++) {
      rises[i] = -Math.log((i + 0.5) / rises.length);
    }
    return rises;
  }

  /** Best plan found so far that keeps every limit; empty where there is none. */
  int[] best() {
    return bestTotal == Double.POSITIVE_INFINITY ? new int[0] : best.clone();
  }

  /** The plan that came closest to keeping every limit. */
  int[] closest() {
    return closest.clone();
  }

  /** Moment of the best plan, kg m; infinite where there is none. */
  double bestMoment() {
    return bestTotal == Double.POSITIVE_INFINITY ? bestTotal : problem.moment(best) * 1e-12;
  }

  /** Offers a plan made elsewhere. */
  void offer(int[] candidate) {
    if (candidate.length == n
        && problem.feasible(candidate)
        && problem.moves(candidate) <= mostMoves) {
      start(candidate);
      keep();
    }
  }

  private void start(int[] from) {
    Arrays.fill(load, 0);
    Arrays.fill(volume, 0);
    side = 0;
    moved = 0;
    total = 0;
    for (int i = 0; i < n; i++) {
      int at = from[i];
      if (!problem.allowed[i][at]) {
        at = options[i][0];
        for (int option : options[i]) {
          at = cost[i][option] < cost[i][at] ? option : at;
        }
      }
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
    for (int j = 0; j < m; j++) {
      over[j] = over(j);
      placesBroken += over[j];
    }
    broken = broken(placesBroken, moved);
  }

  private double over(int j) {
    double sum = 0;
    if (load[j] > problem.loadRoomMg[j]) {
      sum += (load[j] - problem.loadRoomMg[j]) * loadUnit + BROKEN;
    }
    if (volume[j] > problem.volumeRoomMm3[j]) {
      sum += (volume[j] - problem.volumeRoomMm3[j]) * volumeUnit + BROKEN;
    }
    return sum;
  }

  /** By how much all limits are broken, in average boxes; 0 where all are kept. */
  private double broken(double places, int movedThen) {
    double sum = places < BROKEN / 2 ? 0 : places;
    if (movedThen > mostMoves) {
      sum += 0.7 * (movedThen - mostMoves);
    }
    if (side > problem.sideHighest) {
      sum += (side - problem.sideHighest) * sideUnit + BROKEN;
    } else if (side < problem.sideLowest) {
      sum += (problem.sideLowest - side) * sideUnit + BROKEN;
    }
    return sum;
  }

  private void keep() {
    if (total < bestTotal - 1e-10 && problem.feasible(place) && moved <= mostMoves) {
      bestTotal = total;
      System.arraycopy(place, 0, best, 0, n);
    }
  }

  /** One cooling from {@code from} in that many steps. */
  void run(int[] from, long steps, double hotShare, long seed) {
    if (n == 0) {
      bestTotal = 0;
      return;
    }
    long random = seed * 0x9E3779B97F4A7C15L + 0x1234567L;
    start(from);
    keep();
    if (broken < closestBroken) {
      closestBroken = broken;
      System.arraycopy(place, 0, closest, 0, n);
    }
    penalty = spread * 3;
    double hot = spread * hotShare;
    double cold = spread * 0.002;
    double cooling = Math.pow(cold / hot, 1.0 / Math.max(1, steps / 64));
    double temperature = hot;
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
      // xorshift64 (Marsaglia 2003); its fields are the parts of one proposal
      random ^= random << 13;
      random ^= random >>> 7;
      random ^= random << 17;
      int dice = (int) (random >>> 56);
      propose(
          dice,
          (int) ((random >>> 40 & 0xFFFF) * n >>> 16),
          (int) (random >>> 24 & 0xFFFF),
          (int) (random >>> 8 & 0xFFFF),
          temperature * ACCEPTED[(int) (random & 0xFF)]);
    }
  }

  /** A proposal of the kind that {@code dice} (of 256) says, about box {@code one}. */
  private void propose(int dice, int one, int second, int third, double rise) {
    boolean scarce = moved >= mostMoves;
    int a = scarce && moved > 0 && (dice & 1) == 0 ? away[second * moved >>> 16] : one;
    if (dice < 90) {
      int to = dice < 12 ? problem.now[a] : options[a][third * options[a].length >>> 16];
      if (to != place[a] && problem.allowed[a][to]) {
        if (scarce && moved > 0 && place[a] == problem.now[a]) {
          int b = away[second * moved >>> 16];
          change(a, to, b, problem.now[b], a, to, rise);
        } else {
          change(a, to, a, to, a, to, rise);
        }
      }
      return;
    }
    int b = second * n >>> 16;
    int c = dice < 218 ? a : third * n >>> 16;
    int pa = place[a];
    int pb = place[b];
    int pc = place[c];
    if (pa == pb || (c != a && (pb == pc || pa == pc))) {
      return;
    }
    if (c == a) {
      change(a, pb, b, pa, a, pb, rise);
    } else {
      change(a, pb, b, pc, c, pa, rise);
    }
  }

  /** Two or three boxes (b or c may be a again) change place, if that raises the cost no more. */
  private void change(int a, int toA, int b, int toB, int c, int toC, double rise) {
    if (!problem.allowed[a][toA] || !problem.allowed[b][toB] || !problem.allowed[c][toC]) {
      return;
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
      return;
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
    int movedThen = moved + home(a, fromA) - home(a, toA);
    if (b != a) {
      movedThen += home(b, fromB) - home(b, toB);
    }
    if (c != a) {
      movedThen += home(c, fromC) - home(c, toC);
    }
    double brokenThen = broken(places, movedThen);
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
      return;
    }
    put(a, toA);
    put(b, toB);
    put(c, toC);
    total += change;
    placesBroken = places < BROKEN / 2 ? 0 : places;
    broken = brokenThen;
    if (broken == 0) {
      keep();
    } else if (broken < closestBroken) {
      closestBroken = broken;
      System.arraycopy(place, 0, closest, 0, n);
    }
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
    over[j] = over(j);
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
