package sparewell.stow;

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
  /** -ln of evenly spread chances: the rise that is accepted, in temperatures. */
  private static final double[] ACCEPTED = accepted();

  private final StowProblem problem;
  private final int n;
  private final int mostMoves;
  private final TrialPlan trial;

  /** By how much the place of a box changes its cost, kg m; temperatures are shares of it. */
  private final double spread;

  /** Price of a breach of 1, kg m. */
  private double penalty;

  private final int[] best;
  private double bestTotal = Double.POSITIVE_INFINITY;
  private final int[] closest;
  private double closestBroken = Double.POSITIVE_INFINITY;

  /**
   * @param mostMoves most boxes that may move; negative for any number
   */
  Annealing(StowProblem problem, int mostMoves) {
    this.problem = problem;
    this.mostMoves = mostMoves < 0 ? Integer.MAX_VALUE : mostMoves;
    n = problem.boxCount;
    trial = new TrialPlan(problem, this.mostMoves);
    spread = Math.max(1e-6, trial.costs().spread());
    best = new int[n];
    closest = new int[n];
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

  /** The plan that came closest to keeping every limit; of no meaning where one keeps them. */
  int[] closest() {
    return closest.clone();
  }

  /** Moment of the best plan, kg m; infinite where there is none. */
  double bestMoment() {
    return bestTotal == Double.POSITIVE_INFINITY ? bestTotal : problem.moment(best) * 1e-12;
  }

  /** Offers a plan made elsewhere; one that breaks a limit, or of another size, is not taken. */
  void offer(int[] candidate) {
    if (candidate.length == n && problem.feasible(candidate)) {
      trial.start(candidate);
      keep();
    }
  }

  private void keep() {
    if (trial.broken() == 0) {
      if (trial.total() < bestTotal - 1e-10) {
        bestTotal = trial.total();
        System.arraycopy(trial.place, 0, best, 0, n);
      }
    } else if (trial.broken() < closestBroken) {
      closestBroken = trial.broken();
      System.arraycopy(trial.place, 0, closest, 0, n);
    }
  }

  /**
   * One cooling.
   *
   * @param from the plan to start at
   * @param steps changes proposed
   * @param hotShare temperature at the start, as a share of what a place usually changes; at the
   *     end it is 0.002
   * @param seed of the proposals
   */
  void run(int[] from, long steps, double hotShare, long seed) {
    trial.start(from);
    keep();
    if (n == 0) {
      return;
    }
    long random = seed * 0x9E3779B97F4A7C15L + 0x1234567L;
    penalty = spread * 3;
    double temperature = spread * hotShare;
    double cold = spread * 0.002;
    double cooling = Math.pow(cold / temperature, 1.0 / Math.max(1, steps / 64));
    int cleanSince = 0;
    for (long at = 0; at < steps; at++) {
      if ((at & 63) == 63) {
        temperature *= cooling;
        if (trial.broken() > 0) {
          penalty = Math.min(penalty * 1.002, spread * 200);
          cleanSince = 0;
        } else if (++cleanSince > 4) {
          penalty = Math.max(penalty * 0.998, spread * 0.1);
        }
      }
      random = next(random); // its fields are the parts of one proposal
      int dice = (int) (random >>> 56);
      propose(
          dice,
          (int) ((random >>> 40 & 0xFFFF) * n >>> 16),
          (int) (random >>> 24 & 0xFFFF),
          (int) (random >>> 8 & 0xFFFF),
          temperature * ACCEPTED[(int) (random & 0xFF)]);
    }
  }

  /** The random number after that one: xorshift64 (Marsaglia 2003); every number but 0 comes up. */
  static long next(long random) {
    long next = random ^ random << 13;
    next ^= next >>> 7;
    return next ^ next << 17;
  }

  /** A proposal of the kind that {@code dice} (of 256) says, about box {@code one}. */
  private void propose(int dice, int one, int second, int third, double rise) {
    int moved = trial.moved().count();
    boolean scarce = moved >= mostMoves && moved > 0;
    int a = scarce && (dice & 1) == 0 ? trial.moved().get(second * moved >>> 16) : one;
    boolean changed;
    if (dice < 90) {
      int[] options = trial.costs().options(a);
      int to = dice < 12 ? problem.now[a] : options[third * options.length >>> 16];
      if (to == trial.place[a]) {
        return;
      }
      if (scarce && trial.place[a] == problem.now[a]) {
        int b = trial.moved().get(second * moved >>> 16);
        changed = trial.together(a, to, b, problem.now[b], a, to, penalty, rise);
      } else {
        changed = trial.move(a, to, penalty, rise);
      }
    } else {
      int b = second * n >>> 16;
      int pa = trial.place[a];
      int pb = trial.place[b];
      if (pa == pb) {
        return;
      }
      int c = dice < 218 ? a : third * n >>> 16;
      int pc = trial.place[c];
      if (c == a) {
        changed = trial.swap(a, b, penalty, rise);
      } else {
        boolean distinct = pc != pa && pc != pb;
        changed = distinct && trial.together(a, pb, b, pc, c, pa, penalty, rise);
      }
    }
    if (changed) {
      keep();
    }
  }
}
