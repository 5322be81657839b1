package sparewell.stow;

/**
 * A proven lower bound on the moment: the rule 'each box in one place' is priced (Lagrangian
 * relaxation), and each place then takes its most valuable set of boxes exactly. Side limits and
 * the number of moves are priced as well. Any prices give a valid bound; a subgradient ascent looks
 * for good ones. The bound is that of the set-partitioning relaxation, tighter than linear
 * programming, above all where a place takes few boxes.
 *
 * <p>Values are in kg m.
 *
 * @see "M. L. Fisher, The Lagrangian relaxation method for solving integer programming problems,
 *     Management Science 27 (1981), from memory"
 */
final class DualBound {
  private static final double SMOOTHING = 0.15;

  private final StowProblem problem;
  private final Prices prices;
  private final PricedPlaces places;
  private final double[][] share;
  private final double[] boxSlack;
  private int mostMoves = -1;

  DualBound(StowProblem problem) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    this.problem = problem;
    share = new double[n][m];
    boxSlack = new double[n];
    double[] start = new double[n];
    double sides = 0;
    for (int i = 0; i < n; i++) {
      double sum = 0;
      int options = 0;
      for (int j = 0; j < m; j++) {
        if (problem.allowed[i][j]) {
          sum += problem.momentKgM(i, j);
          sides += Math.abs(problem.sideMomentKgM(i, j));
          options++;
        }
      }
      start[i] = sum / Math.max(1, options);
    }
    prices = new Prices(start, Math.max(1e-9, sides / Math.max(1, n * m)));
    places = new PricedPlaces(problem, prices);
  }

  /** From now on for at most so many moved boxes; negative for any number. */
  void mostMoves(int most) {
    mostMoves = most;
    prices.move = most < 0 ? 0 : prices.move;
  }

  /** The price of a moved box, kg m; 0 where any number may move. */
  double movePrice() {
    return prices.move;
  }

  /** How exactly the places' best sets are searched, kg m. */
  void knapsackTolerance(double value) {
    places.knapsackTolerance(value);
  }

  /** Prices as they are now, to come back to. */
  double[] prices() {
    return prices.copy();
  }

  /** Takes up prices kept earlier. */
  void prices(double[] kept) {
    prices.take(kept);
    prices.move = mostMoves < 0 ? 0 : prices.move;
  }

  /** Starts the places' surrogate limits at the shares of volume that linear prices give. */
  void mixes(double[] shares) {
    places.mixes(shares);
  }

  /** Work done so far, see {@link Knapsack#work}. */
  long work() {
    return places.work();
  }

  /** How often that place took the box of late, 0..1, the last evaluations weighing most. */
  double share(int box, int at) {
    return share[box][at];
  }

  /** The bound at the present prices; positive infinity where no plan is left. */
  double evaluate(boolean[][] allowed) {
    return places.evaluate(allowed, mostMoves);
  }

  /**
   * Raises the bound by at most that many steps, towards {@code target}; leaves the best prices
   * found in force and evaluated.
   *
   * @param steps at least 1
   * @param steadiness starting length of a step, about 1
   * @return the best bound found; positive infinity where no plan is left
   */
  double ascend(boolean[][] allowed, double target, int steps, double steadiness) {
    double theta = steadiness;
    double best = -Double.MAX_VALUE;
    int sinceBetter = 0;
    int shrunk = 0;
    prices.forgetDirection();
    for (int at = 0; at < steps; at++) {
      double bound = evaluate(allowed);
      if (bound == Double.POSITIVE_INFINITY) {
        return bound;
      }
      smooth(at == 0);
      if (bound > best + 1e-9 * Math.abs(bound)) {
        best = bound;
        prices.keep();
        sinceBetter = 0;
        if (best >= target) {
          return best;
        }
      } else if (++sinceBetter >= 8) {
        theta *= 0.7;
        sinceBetter = 0;
        if (++shrunk % 4 == 0) {
          prices.restore();
          prices.forgetDirection();
        }
        if (theta < 1e-3) {
          break;
        }
      }
      if (!climb(theta * Math.max(1e-9, target - bound))) {
        break;
      }
    }
    prices.restore();
    evaluate(allowed);
    return best;
  }

  private boolean climb(double rise) {
    for (int i = 0; i < boxSlack.length; i++) {
      boxSlack[i] = places.slack(i);
    }
    int moveSlack = mostMoves >= 0 ? places.moves() - mostMoves : 0;
    return prices.climb(boxSlack, places.sideSlack(), moveSlack, rise);
  }

  private void smooth(boolean first) {
    double weight = first ? 1 : SMOOTHING;
    for (int i = 0; i < share.length; i++) {
      for (int j = 0; j < share[i].length && !places.fixed(i); j++) {
        share[i][j] += weight * ((places.chosen(i, j) ? 1 : 0) - share[i][j]);
      }
    }
  }

  /**
   * Strikes out every place of a box that cannot be part of a plan better than {@code target}.
   *
   * @return how many were struck out; -1 where no plan is left
   */
  int strikeOut(boolean[][] allowed, double target) {
    double bound = evaluate(allowed);
    int struck = 0;
    for (int i = 0; i < problem.boxCount; i++) {
      if (places.fixed(i)) {
        continue;
      }
      double[] forced = places.forced(allowed, bound, i);
      boolean left = false;
      for (int j = 0; j < forced.length; j++) {
        if (allowed[i][j] && forced[j] >= target) {
          allowed[i][j] = false;
          struck++;
        }
        left |= allowed[i][j];
      }
      if (!left) {
        return -1;
      }
    }
    return struck;
  }
}
