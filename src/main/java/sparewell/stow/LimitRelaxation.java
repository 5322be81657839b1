package sparewell.stow;

import java.util.Arrays;

/**
 * Relaxes volume and load of each place, so that each box goes to its place of least reduced cost
 * (cost and multipliers of what it takes up). At its best the bound is that of linear programming:
 * weaker than {@link AssignmentRelaxation}, but a hundredth of its work, and the multipliers tell
 * local search which place a box is worth.
 *
 * <p>Value: sum of the boxes' least reduced costs - sum over limits of multiplier x limit, kg m.
 */
final class LimitRelaxation extends LagrangianRelaxation {
  private final double volumeUnit;
  private final double[] volume;
  private final double[] load;
  private final double[] volumeRoom;
  private final double[] loadRoom;
  private long work;

  LimitRelaxation(StowProblem problem) {
    super(problem, 0, 2 * problem.placeCount(), 0.02);
    volumeUnit = unit(problem.volumeMm3());
    volume = Arrays.stream(problem.volumeMm3()).mapToDouble(one -> one / volumeUnit).toArray();
    load = Arrays.stream(problem.weightMg()).mapToDouble(one -> one / loadUnit).toArray();
    volumeRoom = rooms(problem.volumeRoomMm3(), volumeUnit);
    loadRoom = rooms(problem.loadRoomMg(), loadUnit);
  }

  /** Room for all boxes is as good as no limit. */
  private double[] rooms(long[] rooms, double unit) {
    return Arrays.stream(rooms).mapToDouble(room -> Math.min(n, room / unit)).toArray();
  }

  /** Multiplier of a mm3 of the place, kg m. */
  double perVolume(int place) {
    return multiplier[place] / volumeUnit;
  }

  /** Multiplier of a mg of load in the place, kg m. */
  double perLoad(int place) {
    return multiplier[m + place] / loadUnit;
  }

  /** Work done so far; a unit takes about as long as a branch of {@link Repacking}. */
  long work() {
    return work;
  }

  private double reduced(int box, int place) {
    return relaxed(box, place)
        + multiplier[place] * volume[box]
        + multiplier[m + place] * load[box];
  }

  /** Least reduced cost of a box, kg m; positive infinity where no place is open. */
  double least(boolean[] open, int box) {
    int place = cheapest(open, box);
    return place < 0 ? Double.POSITIVE_INFINITY : reduced(box, place);
  }

  /** The open place of least reduced cost; -1 where none is open. */
  private int cheapest(boolean[] open, int box) {
    int found = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int place = 0; place < m; place++) {
      if (open[place]) {
        double its = reduced(box, place);
        if (its < least) {
          least = its;
          found = place;
        }
      }
    }
    return found;
  }

  @Override
  double evaluate(boolean[][] open, int mostMoves) {
    work += 1 + n * m / 4;
    double total = begin(mostMoves);
    for (int place = 0; place < m; place++) {
      total -= multiplier[place] * volumeRoom[place] + multiplier[m + place] * loadRoom[place];
      subgradient[place] = -volumeRoom[place];
      subgradient[m + place] = -loadRoom[place];
    }
    for (int box = 0; box < n; box++) {
      int place = cheapest(open[box], box);
      if (place < 0) {
        return Double.POSITIVE_INFINITY;
      }
      total += reduced(box, place);
      subgradient[place] += volume[box];
      subgradient[m + place] += load[box];
      count(box, place);
    }
    end();
    return total;
  }
}
