package sparewell.stow;

import java.util.SplittableRandom;

/**
 * Looks for good plans by simulated annealing: single boxes change place, pairs swap, three rotate.
 * Broken limits are allowed on the way at a price that rises while they last. Seeded and counted in
 * steps, so that the same problem gives the same plan.
 *
 * @see "S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Optimization by simulated annealing, Science
 *     220 (1983), from memory"
 */
final class Annealing {
  /** Cost of a move where all else is equal, kg m: fewer moves win ties. */
  static final double TIE = 1e-6;

  private final StowProblem problem;
  private final int mostMoves;
  private final int n;
  private final int m;
  private final double[][] cost;
  private final int[][] options;
  private final int[] place;
  private final long[] load;
  private final long[] volume;
  private long side;
  private int moved;
  private double total;
  private double broken;
  private final double volumeUnit;
  private final double loadUnit;
  private final double sideUnit;
  private final double spread;
  private double penalty;
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
    best = new int[n];
    closest = new int[n];
    load = new long[m];
    volume = new long[m];
    double loads = 0;
    double volumes = 0;
    double range = 0;
    double widest = 0;
    for (int i = 0; i < n; i++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      int count = 0;
      for (int j = 0; j < m; j++) {
        cost[i][j] =
            problem.weightMg[i] * 1e-6 * (problem.stationUm[j] * 1e-6)
                + (j == problem.now[i] ? 0 : TIE);
        if (problem.allowed[i][j]) {
          low = Math.min(low, cost[i][j]);
          high = Math.max(high, cost[i][j]);
          count++;
        }
        widest = Math.max(widest, Math.abs((double) problem.offsetUm[j]));
      }
      options[i] = new int[count];
      int at = 0;
      for (int j = 0; j < m; j++) {
        if (problem.allowed[i][j]) {
          options[i][at++] = j;
        }
      }
      loads += problem.weightMg[i];
      volumes += problem.volumeMm3[i];
      range += high - low;
    }
    loadUnit = 1 / Math.max(1, loads / Math.max(1, n));
    volumeUnit = 1 / Math.max(1, volumes / Math.max(1, n));
    sideUnit = loadUnit / Math.max(1, widest);
    spread = Math.max(1e-6, range / Math.max(1, n));
  }

  /** Best plan found so far that keeps every limit; empty where there is none. */
  int[] best() {
    return bestTotal == Double.POSITIVE_INFINITY ? new int[0] : best.clone();
  }

  /** The plan that came closest to keeping every limit. */
  int[] closest() {
    return closest.clone();
  }

  /** Its moment with the ties' cost, kg m; infinite where there is none. */
  double bestTotal() {
    return bestTotal;
  }

  /** Its moment, kg m; infinite where there is none. */
  double bestMoment() {
    return bestTotal == Double.POSITIVE_INFINITY ? bestTotal : problem.moment(best) * 1e-12;
  }

  /** Offers a plan made elsewhere. */
  void offer(int[] candidate) {
    if (problem.feasible(candidate) && problem.moves(candidate) <= mostMoves) {
      start(candidate);
      keep();
    }
  }

  private void start(int[] from) {
    java.util.Arrays.fill(load, 0);
    java.util.Arrays.fill(volume, 0);
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
      moved += at == problem.now[i] ? 0 : 1;
      total += cost[i][at];
    }
    broken = brokenPlaces() + brokenSide(side) + brokenMoves(moved);
  }

  private double brokenPlaces() {
    double sum = 0;
    for (int j = 0; j < m; j++) {
      sum += over(j, load[j], volume[j]);
    }
    return sum;
  }

  private double over(int j, long loadThere, long volumeThere) {
    double sum = 0;
    if (loadThere > problem.loadRoomMg[j]) {
      sum += (loadThere - problem.loadRoomMg[j]) * loadUnit + 0.05;
    }
    if (volumeThere > problem.volumeRoomMm3[j]) {
      sum += (volumeThere - problem.volumeRoomMm3[j]) * volumeUnit + 0.05;
    }
    return sum;
  }

  private double brokenSide(long sideThen) {
    if (sideThen > problem.sideHighest) {
      return (sideThen - problem.sideHighest) * sideUnit + 0.05;
    }
    return sideThen < problem.sideLowest ? (problem.sideLowest - sideThen) * sideUnit + 0.05 : 0;
  }

  private double brokenMoves(int movedThen) {
    return movedThen > mostMoves ? 0.7 * (movedThen - mostMoves) : 0;
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
    SplittableRandom random = new SplittableRandom(seed);
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
        if (broken > 1e-12) {
          penalty = Math.min(penalty * 1.002, spread * 200);
          cleanSince = 0;
        } else if (++cleanSince > 4) {
          penalty = Math.max(penalty * 0.998, spread * 0.1);
        }
      }
      double dice = random.nextDouble();
      int a = random.nextInt(n);
      if (options[a].length < 1) {
        continue;
      }
      if (dice < 0.35) {
        int to = dice < 0.05 ? problem.now[a] : options[a][random.nextInt(options[a].length)];
        if (problem.allowed[a][to]) {
          tryShift(a, to, temperature, random);
        }
      } else {
        int b = random.nextInt(n);
        if (dice < 0.85) {
          tryRotate(a, b, -1, temperature, random);
        } else {
          tryRotate(a, b, random.nextInt(n), temperature, random);
        }
      }
    }
  }

  private void tryShift(int a, int to, double temperature, SplittableRandom random) {
    int from = place[a];
    if (from == to) {
      return;
    }
    long w = problem.weightMg[a];
    long v = problem.volumeMm3[a];
    double change = cost[a][to] - cost[a][from];
    long sideThen = side + w * (problem.offsetUm[to] - problem.offsetUm[from]);
    int movedThen = moved + home(a, from) - home(a, to);
    double brokenChange =
        over(from, load[from] - w, volume[from] - v)
            + over(to, load[to] + w, volume[to] + v)
            - over(from, load[from], volume[from])
            - over(to, load[to], volume[to])
            + brokenSide(sideThen)
            - brokenSide(side)
            + brokenMoves(movedThen)
            - brokenMoves(moved);
    if (accepted(change + penalty * brokenChange, temperature, random)) {
      put(a, to);
      settle(change, brokenChange, sideThen, movedThen);
    }
  }

  /** a to b's place, b to c's, c to a's; a negative c makes it a swap of a and b. */
  private void tryRotate(int a, int b, int c, double temperature, SplittableRandom random) {
    int pa = place[a];
    int pb = place[b];
    int last = c < 0 ? b : c;
    int pc = place[last];
    if (pa == pb || (c >= 0 && (pb == pc || pa == pc))) {
      return;
    }
    int toB = c < 0 ? pa : pc;
    if (!problem.allowed[a][pb] || !problem.allowed[b][toB] || !problem.allowed[last][pa]) {
      return;
    }
    double change = cost[a][pb] - cost[a][pa] + cost[b][toB] - cost[b][pb];
    long wa = problem.weightMg[a];
    long wb = problem.weightMg[b];
    long va = problem.volumeMm3[a];
    long vb = problem.volumeMm3[b];
    long sideThen =
        side
            + wa * (problem.offsetUm[pb] - problem.offsetUm[pa])
            + wb * (problem.offsetUm[toB] - problem.offsetUm[pb]);
    int movedThen = moved + home(a, pa) - home(a, pb) + home(b, pb) - home(b, toB);
    long wl = wb;
    long vl = vb;
    double brokenChange = 0;
    if (c >= 0) {
      wl = problem.weightMg[c];
      vl = problem.volumeMm3[c];
      change += cost[c][pa] - cost[c][pc];
      sideThen += wl * (problem.offsetUm[pa] - problem.offsetUm[pc]);
      movedThen += home(c, pc) - home(c, pa);
      brokenChange =
          over(pc, load[pc] + wb - wl, volume[pc] + vb - vl) - over(pc, load[pc], volume[pc]);
    }
    brokenChange +=
        over(pa, load[pa] + wl - wa, volume[pa] + vl - va)
            + over(pb, load[pb] + wa - wb, volume[pb] + va - vb)
            - over(pa, load[pa], volume[pa])
            - over(pb, load[pb], volume[pb])
            + brokenSide(sideThen)
            - brokenSide(side)
            + brokenMoves(movedThen)
            - brokenMoves(moved);
    if (accepted(change + penalty * brokenChange, temperature, random)) {
      put(a, pb);
      put(b, toB);
      if (c >= 0) {
        put(c, pa);
      }
      settle(change, brokenChange, sideThen, movedThen);
    }
  }

  private static boolean accepted(double change, double temperature, SplittableRandom random) {
    return change <= 0
        || (change < temperature * 20 && random.nextDouble() < Math.exp(-change / temperature));
  }

  private int home(int box, int at) {
    return at == problem.now[box] ? 1 : 0;
  }

  private void put(int box, int to) {
    int from = place[box];
    load[from] -= problem.weightMg[box];
    volume[from] -= problem.volumeMm3[box];
    load[to] += problem.weightMg[box];
    volume[to] += problem.volumeMm3[box];
    place[box] = to;
  }

  private void settle(double change, double brokenChange, long sideThen, int movedThen) {
    total += change;
    broken += brokenChange;
    side = sideThen;
    moved = movedThen;
    if (broken < 1e-9) {
      keep();
    } else if (broken < closestBroken - 1e-9) {
      closestBroken = broken;
      System.arraycopy(place, 0, closest, 0, n);
    }
  }
}
