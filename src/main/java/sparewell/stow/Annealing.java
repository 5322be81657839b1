package sparewell.stow;

import java.util.Arrays;

/**
 * Local search for good plans: simulated annealing over a large neighbourhood. In each step a box
 * must leave its place, and it and the boxes of a few places are packed anew at least cost by
 * {@link Repacking}. Seeded and counted in branches, so that the same problem gives the same plans.
 *
 * @see "S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Optimization by simulated annealing, Science
 *     220 (1983), from memory"
 */
final class Annealing {
  /** Most boxes packed anew together, and most branches looked at for it. */
  private static final int MOST_FREE = 12;

  private static final long BRANCHES = 500;

  /** Temperature at the start of a cooling, as a share of what a place usually changes. */
  private static final double HOT = 0.2;

  /** Temperature at the end, as a share of that at the start. */
  private static final double COLD = 0.02;

  private final StowProblem problem;
  private final int n;
  private final BestPlans plans;
  private final Repacking repacking;
  private final int[] closest;
  private double closestCost = Double.POSITIVE_INFINITY;
  private final boolean[] free;
  private long random;

  Annealing(StowProblem problem, BestPlans plans, Repacking repacking) {
    this.problem = problem;
    n = problem.boxCount();
    this.plans = plans;
    this.repacking = repacking;
    closest = problem.now().clone();
    free = new boolean[n];
  }

  /**
   * One cooling.
   *
   * @param from the plan it starts from
   * @param most most boxes that may move
   * @param work branches looked at
   * @param seed of the proposals
   */
  void anneal(int[] from, int most, long work, long seed) {
    int[] place = standing(from);
    random = seed * 0x9E3779B97F4A7C15L + 0x1234567L;
    double cost = repacking.penalised(place, most);
    keep(place, cost);
    long start = repacking.work();
    double done = 0;
    while (n > 0 && done < 1) {
      double temperature = repacking.spread * HOT * Math.pow(COLD, done);
      double rise = -temperature * Math.log((random(1 << 20) + 0.5) / (1 << 20));
      int leaving = choose(place, most);
      if (repacking.repack(place, free, most, rise, leaving, BRANCHES)) {
        cost = repacking.penalised(place, most);
        keep(place, cost);
      }
      done = (repacking.work() - start) / (double) work;
    }
  }

  /** The plan that comes closest to keeping every limit; of no meaning where one keeps them. */
  int[] closest() {
    int[] place = closest.clone();
    for (int box = 0; box < n; box++) {
      if (place[box] == repacking.outside) {
        place[box] = leastOver(place, box);
      }
    }
    return place;
  }

  private int leastOver(int[] place, int box) {
    long[] load = new long[problem.placeCount()];
    long[] volume = new long[problem.placeCount()];
    for (int other = 0; other < n; other++) {
      if (place[other] != repacking.outside) {
        load[place[other]] += problem.weightMg()[other];
        volume[place[other]] += problem.volumeMm3()[other];
      }
    }
    int found = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < load.length; j++) {
      long overLoad = load[j] + problem.weightMg()[box] - problem.loadRoomMg()[j];
      long overVolume = volume[j] + problem.volumeMm3()[box] - problem.volumeRoomMm3()[j];
      double over =
          Math.max(0, overLoad) / (double) Math.max(1, problem.weightMg()[box])
              + Math.max(0, overVolume) / (double) Math.max(1, problem.volumeMm3()[box]);
      if (problem.allowed(box, j) && over < least) {
        found = j;
        least = over;
      }
    }
    return found;
  }

  /** That plan; a box that may not stand where it is, or finds no room, stands outside. */
  private int[] standing(int[] from) {
    int[] place = from.clone();
    long[] load = problem.loadRoomMg().clone();
    long[] volume = problem.volumeRoomMm3().clone();
    for (int box = 0; box < n; box++) {
      int at = place[box];
      if (problem.allowed(box, at)
          && load[at] >= problem.weightMg()[box]
          && volume[at] >= problem.volumeMm3()[box]) {
        load[at] -= problem.weightMg()[box];
        volume[at] -= problem.volumeMm3()[box];
      } else {
        place[box] = repacking.outside;
      }
    }
    return place;
  }

  private void keep(int[] place, double cost) {
    plans.offer(place);
    if (cost < closestCost) {
      closestCost = cost;
      System.arraycopy(place, 0, closest, 0, n);
    }
  }

  /**
   * Chooses the boxes to be packed anew: one that leaves, where moves are few some that have moved,
   * then those of a random place, of the place left, and of more random places.
   *
   * @return the box that leaves
   */
  private int choose(int[] place, int most) {
    Arrays.fill(free, false);
    int first = random(n);
    int leaving = first;
    boolean lost = random(2) == 0;
    for (int step = 0; lost && step < n && place[leaving] != repacking.outside; step++) {
      leaving = (first + step) % n;
    }
    int left = 3 + random(MOST_FREE - 3) - 1;
    free[leaving] = true;
    if (most < n) {
      left -= free(place, -1, Math.min(left, most) / 2);
    }
    for (int part = 0; left > 0 && part < 3 * problem.placeCount(); part++) {
      int at = part == 1 ? place[leaving] : random(problem.placeCount() + 1);
      left -= free(place, at, left);
    }
    return leaving;
  }

  /** Frees up to that many boxes of a place, of -1 those that have moved; gives how many. */
  private int free(int[] place, int at, int most) {
    int first = random(n);
    int freed = 0;
    for (int step = 0; step < n && freed < most; step++) {
      int box = (first + step) % n;
      boolean its = at < 0 ? place[box] != problem.now()[box] : place[box] == at;
      if (its && !free[box]) {
        free[box] = true;
        freed++;
      }
    }
    return freed;
  }

  /** A random whole number below the bound: xorshift64 (Marsaglia 2003). */
  private int random(int bound) {
    random ^= random << 13;
    random ^= random >>> 7;
    random ^= random << 17;
    return (int) ((random >>> 33) * bound >>> 31);
  }
}
