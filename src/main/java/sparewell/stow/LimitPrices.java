package sparewell.stow;

import java.util.Arrays;

/**
 * Prices of the limits by Lagrangian relaxation: volume and load of each place, side moment and
 * number of moves each have a multiplier, and each box goes to its place of least reduced cost
 * (cost and prices paid). Any multipliers give a valid bound; a subgradient ascent looks for good
 * ones. At its best the bound is that of linear programming: weaker than {@link LagrangianBound},
 * but a hundredth of its work, and the prices tell local search which place a box is worth.
 *
 * <p>Value: sum of the boxes' least reduced costs - sum over limits of multiplier x limit, kg m.
 *
 * @see "M. L. Fisher, The Lagrangian relaxation method for solving integer programming problems,
 *     Management Science 27 (1981), from memory"
 */
final class LimitPrices {
  /** Length of the last step of an ascent as a share of the first. */
  private static final double SHORTEST = 0.02;

  private final StowProblem problem;
  private final int n;
  private final int m;

  /** Index of the multiplier of side moment, then that of moves; volumes and loads come before. */
  private final int ofSide;

  private final int ofMove;

  /**
   * Prices of the volume of each place, the load of each place, side moment (positive: its upper
   * limit).
   */
  private final double[] multiplier;

  /** By how much each limit is exceeded as just evaluated. */
  private final double[] excess;

  // Amounts in units of the average box, so that one length of step suits all limits.
  private final double volumeUnit;
  private final double loadUnit;
  private final double sideUnit;
  private final double[] volume;
  private final double[] load;
  private final double[] volumeRoom;
  private final double[] loadRoom;
  private long work;

  LimitPrices(StowProblem problem) {
    this.problem = problem;
    n = problem.boxCount;
    m = problem.placeCount;
    ofSide = 2 * m;
    ofMove = 2 * m + 1;
    multiplier = new double[2 * m + 2];
    excess = new double[2 * m + 2];
    volumeUnit = unit(problem.volumeMm3);
    loadUnit = unit(problem.weightMg);
    double arms = Arrays.stream(problem.offsetUm).mapToDouble(Math::abs).average().orElse(0);
    sideUnit = Math.max(1, loadUnit * arms);
    volume = Arrays.stream(problem.volumeMm3).mapToDouble(one -> one / volumeUnit).toArray();
    load = Arrays.stream(problem.weightMg).mapToDouble(one -> one / loadUnit).toArray();
    volumeRoom = rooms(problem.volumeRoomMm3, volumeUnit);
    loadRoom = rooms(problem.loadRoomMg, loadUnit);
  }

  private static double unit(long[] amounts) {
    return Math.max(1, Arrays.stream(amounts).average().orElse(1));
  }

  /** Room for all boxes is as good as no limit. */
  private double[] rooms(long[] rooms, double unit) {
    return Arrays.stream(rooms).mapToDouble(room -> Math.min(n, room / unit)).toArray();
  }

  /** Price of a mm3 of the place, kg m. */
  double perVolume(int place) {
    return multiplier[place] / volumeUnit;
  }

  /** Price of a mg of load in the place, kg m. */
  double perLoad(int place) {
    return multiplier[m + place] / loadUnit;
  }

  /** Multiplier of the side moment, kg m per mg um, positive for its upper limit. */
  double perSideMoment() {
    return multiplier[ofSide] / sideUnit;
  }

  /** Price of a moved box, kg m. */
  double perMove() {
    return multiplier[ofMove];
  }

  /** Work done so far; a unit takes about as long as a branch of {@link Repacking}. */
  long work() {
    return work;
  }

  /** Cost of a box in a place and the prices of what it takes up there, kg m. */
  private double reduced(int box, int place) {
    return problem.cost[box][place]
        + multiplier[place] * volume[box]
        + multiplier[m + place] * load[box]
        + multiplier[ofSide] * side(box, place)
        + (place == problem.now[box] ? 0 : multiplier[ofMove]);
  }

  private double side(int box, int place) {
    return load[box] * problem.offsetUm[place] * (loadUnit / sideUnit);
  }

  /** The open place of least reduced cost; -1 where none is open. */
  private int cheapest(boolean[][] open, int box) {
    int found = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int place = 0; place < m; place++) {
      if (open[box][place]) {
        double its = reduced(box, place);
        if (its < least) {
          least = its;
          found = place;
        }
      }
    }
    return found;
  }

  /**
   * The bound at the present multipliers, kg m; positive infinity where no plan is left.
   *
   * @param open the open places of each box
   * @param mostMoves most boxes that may move
   */
  private double evaluate(boolean[][] open, int mostMoves) {
    work += 1 + n * m / 4;
    double high = problem.sideHighest / sideUnit;
    double low = problem.sideLowest / sideUnit;
    double total =
        -multiplier[ofSide] * (multiplier[ofSide] >= 0 ? high : low)
            - multiplier[ofMove] * mostMoves;
    for (int place = 0; place < m; place++) {
      total -= multiplier[place] * volumeRoom[place] + multiplier[m + place] * loadRoom[place];
      excess[place] = -volumeRoom[place];
      excess[m + place] = -loadRoom[place];
    }
    excess[ofMove] = -mostMoves;
    double pull = 0;
    for (int box = 0; box < n; box++) {
      int place = cheapest(open, box);
      if (place < 0) {
        return Double.POSITIVE_INFINITY;
      }
      total += reduced(box, place);
      excess[place] += volume[box];
      excess[m + place] += load[box];
      excess[ofMove] += place == problem.now[box] ? 0 : 1;
      pull += side(box, place);
    }
    // the limit that has a multiplier, else the one that is broken
    double beyond = Math.max(0, pull - high) + Math.min(0, pull - low);
    excess[ofSide] =
        multiplier[ofSide] > 0 ? pull - high : multiplier[ofSide] < 0 ? pull - low : beyond;
    return total;
  }

  /**
   * Raises the bound by at most that many steps, towards {@code target}; leaves the best
   * multipliers found in force.
   *
   * @param steps at least 1
   * @param share of the way to the target that the first step would gain if the bound were straight
   * @return the best bound found, kg m; positive infinity where no plan is left
   */
  double ascend(boolean[][] open, int mostMoves, double target, int steps, double share) {
    double fall = Math.pow(SHORTEST, 1.0 / steps);
    double length = share;
    double best = Double.NEGATIVE_INFINITY;
    double[] kept = multiplier.clone();
    for (int step = 0; step < steps; step++) {
      double bound = evaluate(open, mostMoves);
      if (bound > best) {
        best = bound;
        kept = multiplier.clone();
      }
      if (best >= target || !climb(length * (target - bound))) {
        break;
      }
      length *= fall;
    }
    System.arraycopy(kept, 0, multiplier, 0, multiplier.length);
    return best;
  }

  /** One step uphill, by that much if the bound were straight; false where there is no way up. */
  private boolean climb(double rise) {
    double slope = 0;
    for (int k = 0; k < excess.length; k++) {
      if (k != ofSide && multiplier[k] <= 0 && excess[k] < 0) {
        excess[k] = 0;
      }
      slope += excess[k] * excess[k];
    }
    if (slope < 1e-12) {
      return false;
    }
    double before = multiplier[ofSide];
    for (int k = 0; k < excess.length; k++) {
      double raised = multiplier[k] + rise / slope * excess[k];
      multiplier[k] = k == ofSide ? raised : Math.max(0, raised);
    }
    if (before * multiplier[ofSide] < 0) {
      multiplier[ofSide] = 0; // only one of the two side limits has a multiplier at a time
    }
    return true;
  }
}
