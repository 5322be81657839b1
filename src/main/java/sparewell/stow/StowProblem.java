package sparewell.stow;

import java.util.Arrays;

/**
 * The assignment problem in numbers: every box that may be moved goes to one place (a compartment
 * aboard); least sum of weight x station under volume, load and side limits.
 *
 * <p>Resources are whole numbers (milligrams, cubic millimetres, milligrams x micrometres), so that
 * no answer hangs on rounding. What does not move is taken off the limits beforehand.
 */
final class StowProblem {
  /** No limit; small enough that sums do not overflow. */
  static final long UNLIMITED = Long.MAX_VALUE / 4;

  final int boxCount;
  final int placeCount;

  /** By box. */
  final long[] weightMg;

  final long[] volumeMm3;

  /** By place: forward of the transom; from the centreline, starboard positive. */
  final long[] stationUm;

  final long[] offsetUm;

  /** By place: what the boxes may weigh and fill. */
  final long[] loadRoomMg;

  final long[] volumeRoomMm3;

  /** By box and place: whether the box fits there and may be put there. */
  final boolean[][] allowed;

  /** By box: the place it stands in now, allowed or not. */
  final int[] now;

  /** Limits of the boxes' side moment, mg um. */
  final long sideLowest;

  final long sideHighest;

  /**
   * The arrays are kept, not copied.
   *
   * @param loadRoomMg at least 0, or {@link #UNLIMITED}
   * @param volumeRoomMm3 at least 0, or {@link #UNLIMITED}
   */
  StowProblem(
      long[] weightMg,
      long[] volumeMm3,
      long[] stationUm,
      long[] offsetUm,
      long[] loadRoomMg,
      long[] volumeRoomMm3,
      boolean[][] allowed,
      int[] now,
      long sideLowest,
      long sideHighest) {
    this.boxCount = weightMg.length;
    this.placeCount = stationUm.length;
    this.weightMg = weightMg;
    this.volumeMm3 = volumeMm3;
    this.stationUm = stationUm;
    this.offsetUm = offsetUm;
    this.loadRoomMg = loadRoomMg;
    this.volumeRoomMm3 = volumeRoomMm3;
    this.allowed = allowed;
    this.now = now;
    this.sideLowest = sideLowest;
    this.sideHighest = sideHighest;
  }

  /** Moment of one box in one place, weight x station, kg m. */
  double momentKgM(int box, int at) {
    return weightMg[box] * 1e-6 * (stationUm[at] * 1e-6);
  }

  /** Side moment of one box in one place, weight x side offset (starboard positive), kg m. */
  double sideMomentKgM(int box, int at) {
    return weightMg[box] * 1e-6 * (offsetUm[at] * 1e-6);
  }

  /** Moment of the boxes as assigned, mg um. */
  long moment(int[] place) {
    long sum = 0;
    for (int box = 0; box < boxCount; box++) {
      sum += weightMg[box] * stationUm[place[box]];
    }
    return sum;
  }

  /** Side moment of the boxes as assigned, mg um. */
  long sideMoment(int[] place) {
    long sum = 0;
    for (int box = 0; box < boxCount; box++) {
      sum += weightMg[box] * offsetUm[place[box]];
    }
    return sum;
  }

  /** Boxes that stand elsewhere than now. */
  int moves(int[] place) {
    int moves = 0;
    for (int box = 0; box < boxCount; box++) {
      if (place[box] != now[box]) {
        moves++;
      }
    }
    return moves;
  }

  /** Mass of the boxes in each place as assigned, mg. */
  long[] loads(int[] place) {
    return sums(weightMg, place);
  }

  /** Volume of the boxes in each place as assigned, mm3. */
  long[] volumes(int[] place) {
    return sums(volumeMm3, place);
  }

  private long[] sums(long[] amount, int[] place) {
    long[] sums = new long[placeCount];
    for (int box = 0; box < boxCount; box++) {
      sums[place[box]] += amount[box];
    }
    return sums;
  }

  /** Whether every limit is kept. */
  boolean feasible(int[] place) {
    for (int box = 0; box < boxCount; box++) {
      if (!allowed[box][place[box]]) {
        return false;
      }
    }
    long[] load = loads(place);
    long[] volume = volumes(place);
    for (int at = 0; at < placeCount; at++) {
      if (load[at] > loadRoomMg[at] || volume[at] > volumeRoomMm3[at]) {
        return false;
      }
    }
    long side = sideMoment(place);
    return side >= sideLowest && side <= sideHighest;
  }

  /** The same problem with some limits lifted, to find out which of them conflict. */
  StowProblem without(boolean noLoads, boolean noVolumes, boolean noSides) {
    return new StowProblem(
        weightMg,
        volumeMm3,
        stationUm,
        offsetUm,
        noLoads ? unlimited() : loadRoomMg,
        noVolumes ? unlimited() : volumeRoomMm3,
        allowed,
        now,
        noSides ? -UNLIMITED : sideLowest,
        noSides ? UNLIMITED : sideHighest);
  }

  private long[] unlimited() {
    long[] none = new long[placeCount];
    Arrays.fill(none, UNLIMITED);
    return none;
  }
}
