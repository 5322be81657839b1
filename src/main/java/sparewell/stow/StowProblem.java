package sparewell.stow;

import java.util.Arrays;

/**
 * The assignment problem in numbers: every box that may be moved goes to one place (a compartment
 * aboard); least sum of costs (weight x station, and what reaching it is worth) under volume, load
 * and side limits.
 *
 * <p>Resources are whole numbers (milligrams, cubic millimetres, milligrams x micrometres), so that
 * no answer hangs on rounding. What does not move is taken off the limits beforehand.
 *
 * @param weightMg by box
 * @param volumeMm3 by box
 * @param offsetUm by place: from the centreline, starboard positive
 * @param loadRoomMg by place: what the boxes may weigh, at least 0, or {@link #UNLIMITED}
 * @param volumeRoomMm3 by place: what the boxes may fill, at least 0, or {@link #UNLIMITED}
 * @param cost by box and place, kg m; infinite where the box does not fit or may not be put
 * @param now by box: the place it stands in now, allowed or not
 * @param sideLowest least side moment of the boxes, mg um
 * @param sideHighest greatest side moment of the boxes, mg um
 */
record StowProblem(
    long[] weightMg,
    long[] volumeMm3,
    long[] offsetUm,
    long[] loadRoomMg,
    long[] volumeRoomMm3,
    double[][] cost,
    int[] now,
    long sideLowest,
    long sideHighest) {
  /** No limit; small enough that sums do not overflow. */
  static final long UNLIMITED = Long.MAX_VALUE / 4;

  int boxCount() {
    return weightMg.length;
  }

  int placeCount() {
    return offsetUm.length;
  }

  boolean allowed(int box, int at) {
    return cost[box][at] < Double.POSITIVE_INFINITY;
  }

  /** Sum of costs as assigned, kg m; the boxes are added up in their order. */
  double cost(int[] place) {
    double sum = 0;
    for (int box = 0; box < boxCount(); box++) {
      sum += cost[box][place[box]];
    }
    return sum;
  }

  /** Side moment of the boxes as assigned, mg um. */
  long sideMoment(int[] place) {
    long sum = 0;
    for (int box = 0; box < boxCount(); box++) {
      sum += weightMg[box] * offsetUm[place[box]];
    }
    return sum;
  }

  /** Boxes that stand elsewhere than now. */
  int moves(int[] place) {
    int moves = 0;
    for (int box = 0; box < boxCount(); box++) {
      moves += place[box] == now[box] ? 0 : 1;
    }
    return moves;
  }

  /** Sums of a quantity of the boxes over the places they are assigned to. */
  long[] sums(long[] amount, int[] place) {
    long[] sums = new long[placeCount()];
    for (int box = 0; box < boxCount(); box++) {
      sums[place[box]] += amount[box];
    }
    return sums;
  }

  /** True if every limit is kept. */
  boolean feasible(int[] place) {
    for (int box = 0; box < boxCount(); box++) {
      if (!allowed(box, place[box])) {
        return false;
      }
    }
    long[] load = sums(weightMg, place);
    long[] volume = sums(volumeMm3, place);
    for (int at = 0; at < placeCount(); at++) {
      if (load[at] > loadRoomMg[at] || volume[at] > volumeRoomMm3[at]) {
        return false;
      }
    }
    long side = sideMoment(place);
    return side >= sideLowest && side <= sideHighest;
  }

  /** The same problem with some limits lifted, to find out which of them conflict. */
  StowProblem without(boolean noLoads, boolean noVolumes) {
    return new StowProblem(
        weightMg,
        volumeMm3,
        offsetUm,
        noLoads ? unlimited() : loadRoomMg,
        noVolumes ? unlimited() : volumeRoomMm3,
        cost,
        now,
        sideLowest,
        sideHighest);
  }

  /** The same problem with another limit of the boxes' side moment, mg um. */
  StowProblem withSides(long lowest, long highest) {
    return new StowProblem(
        weightMg, volumeMm3, offsetUm, loadRoomMg, volumeRoomMm3, cost, now, lowest, highest);
  }

  private long[] unlimited() {
    long[] none = new long[placeCount()];
    Arrays.fill(none, UNLIMITED);
    return none;
  }
}
