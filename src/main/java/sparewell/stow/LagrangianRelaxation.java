package sparewell.stow;

import java.util.Arrays;

/**
 * A lower bound on the cost by Lagrangian relaxation: some rules are dropped, and breaking one
 * costs its multiplier, kg m a unit. Side moment and number of moves are always relaxed; the others
 * make the kind of relaxation. Any multipliers give a valid bound; a subgradient ascent looks for
 * good ones.
 *
 * @see "M. L. Fisher, The Lagrangian relaxation method for solving integer programming problems,
 *     Management Science 27 (1981), from memory"
 */
abstract class LagrangianRelaxation {
  final StowProblem problem;
  final int n;
  final int m;

  /** Index of the multiplier of side moment (positive: its upper limit), then that of moves. */
  final int ofSide;

  final int ofMove;

  final double[] multiplier;

  /** By how much each rule is broken at the multipliers just evaluated. */
  final double[] subgradient;

  /** The first so many rules are equations, whose multipliers may be negative. */
  private final int equations;

  /** Length of the last step of an ascent as a share of the first. */
  private final double shortest;

  // Amounts in units of the average box, so that one length of step suits all limits.
  final double loadUnit;
  private final double sideUnit;
  private final double[] arm;

  /**
   * @param equations number of relaxed rules 'exactly so much', which come first
   * @param limits number of relaxed rules 'at most so much', side moment and moves aside
   */
  LagrangianRelaxation(StowProblem problem, int equations, int limits, double shortest) {
    this.problem = problem;
    this.equations = equations;
    this.shortest = shortest;
    n = problem.boxCount();
    m = problem.placeCount();
    ofSide = equations + limits;
    ofMove = ofSide + 1;
    multiplier = new double[ofMove + 1];
    subgradient = new double[ofMove + 1];
    loadUnit = unit(problem.weightMg());
    double arms = Arrays.stream(problem.offsetUm()).mapToDouble(Math::abs).average().orElse(0);
    sideUnit = Math.max(1, loadUnit * arms);
    arm = Arrays.stream(problem.offsetUm()).mapToDouble(offset -> offset / sideUnit).toArray();
  }

  static double unit(long[] amounts) {
    return Math.max(1, Arrays.stream(amounts).average().orElse(1));
  }

  /**
   * The bound at the present multipliers, kg m; positive infinity where no plan is left.
   *
   * @param open the open places of each box
   * @param mostMoves most boxes that may move
   */
  abstract double evaluate(boolean[][] open, int mostMoves);

  /** Multiplier of the side moment, kg m per mg um. */
  double perSideMoment() {
    return multiplier[ofSide] / sideUnit;
  }

  /** Multiplier of a moved box, kg m. */
  double perMove() {
    return multiplier[ofMove];
  }

  /** Multipliers as they are now, to come back to. */
  double[] multipliers() {
    return multiplier.clone();
  }

  /** Takes up multipliers kept earlier. */
  void multipliers(double[] kept) {
    System.arraycopy(kept, 0, multiplier, 0, multiplier.length);
  }

  /** Cost of a box in a place with the multipliers of side moment and moves, kg m. */
  double relaxed(int box, int place) {
    return problem.cost()[box][place]
        + multiplier[ofSide] * side(box, place)
        + (place == problem.now()[box] ? 0 : multiplier[ofMove]);
  }

  private double side(int box, int place) {
    return problem.weightMg()[box] * arm[place];
  }

  /** Begins an evaluation: nothing stands anywhere; gives what the multipliers' limits add. */
  double begin(int mostMoves) {
    subgradient[ofSide] = 0;
    subgradient[ofMove] = -mostMoves;
    long limit = multiplier[ofSide] >= 0 ? problem.sideHighest() : problem.sideLowest();
    return -multiplier[ofSide] * (limit / sideUnit) - multiplier[ofMove] * mostMoves;
  }

  /** Counts the side moment and the move of a box in a place. */
  void count(int box, int place) {
    subgradient[ofSide] += side(box, place);
    subgradient[ofMove] += place == problem.now()[box] ? 0 : 1;
  }

  /** Ends an evaluation: side moment beyond the limit that has a multiplier or is broken. */
  void end() {
    double high = subgradient[ofSide] - problem.sideHighest() / sideUnit;
    double low = subgradient[ofSide] - problem.sideLowest() / sideUnit;
    double its = multiplier[ofSide];
    subgradient[ofSide] = its > 0 ? high : its < 0 ? low : Math.max(0, high) + Math.min(0, low);
  }

  /**
   * Raises the bound by at most that many steps, towards {@code target}; leaves the best
   * multipliers found in force.
   *
   * @param steps at least 1
   * @param length share of the way to the target that the first step would gain if the bound were
   *     straight
   * @return the best bound found, kg m; positive infinity where no plan is left
   */
  double ascend(boolean[][] open, int mostMoves, double target, int steps, double length) {
    double fall = Math.pow(shortest, 1.0 / steps);
    double share = length;
    double best = Double.NEGATIVE_INFINITY;
    double[] kept = multipliers();
    for (int step = 0; step < steps; step++) {
      double bound = evaluate(open, mostMoves);
      if (bound > best) {
        best = bound;
        kept = multipliers();
      }
      if (best >= target || !climb(share * (target - bound))) {
        break;
      }
      share *= fall;
    }
    multipliers(kept);
    return best;
  }

  /** One step uphill, by that much if the bound were straight; false where there is no way up. */
  private boolean climb(double rise) {
    double slope = 0;
    for (int k = 0; k <= ofMove; k++) {
      if (limit(k) && multiplier[k] <= 0 && subgradient[k] < 0) {
        subgradient[k] = 0; // a limit that does not bind
      }
      slope += subgradient[k] * subgradient[k];
    }
    if (slope < 1e-12) {
      return false;
    }
    double before = multiplier[ofSide];
    for (int k = 0; k <= ofMove; k++) {
      double raised = multiplier[k] + rise / slope * subgradient[k];
      multiplier[k] = limit(k) ? Math.max(0, raised) : raised;
    }
    if (before * multiplier[ofSide] < 0) {
      multiplier[ofSide] = 0; // only one of the two side limits has a multiplier at a time
    }
    return true;
  }

  private boolean limit(int rule) {
    return rule >= equations && rule != ofSide;
  }
}
