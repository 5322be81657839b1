package sparewell.stow;

import java.util.Arrays;

/**
 * The most valuable set of boxes for one place under its volume and load limits: depth-first branch
 * and bound. The bound is the fractional knapsack over one surrogate limit, a mix of the two that
 * leans to the one that is overrun. One for each place: it remembers the order of the boxes by
 * worth and the mix, which change little from call to call.
 */
final class Knapsack {
  private static final double MIX_STEP = 0.05;
  static final long NODE_LIMIT = 2_000;

  private final long[] boxVolume;
  private final long[] boxLoad;

  /** All boxes, the most valuable for their size first when last looked at. */
  private final int[] order;

  // In that order: worth for its use of the surrogate limit, that use, worth, volume, load.
  private final double[] ratio;
  private final double[] use;
  private final double[] value;
  private final long[] volume;
  private final long[] load;

  /** Sums of use and value of all boxes before this one. */
  private final double[] useBefore;

  private final double[] valueBefore;
  private final boolean[] taken;
  private final boolean[] best;
  private int count;
  private double bestValue;
  private double mix = 0.5;
  private long nodes;
  private long work;

  Knapsack(long[] boxVolume, long[] boxLoad) {
    int n = boxVolume.length;
    this.boxVolume = boxVolume;
    this.boxLoad = boxLoad;
    order = new int[n];
    for (int i = 0; i < n; i++) {
      order[i] = i;
    }
    ratio = new double[n];
    use = new double[n];
    value = new double[n];
    volume = new long[n];
    load = new long[n];
    useBefore = new double[n + 1];
    valueBefore = new double[n + 1];
    taken = new boolean[n];
    best = new boolean[n];
  }

  /**
   * The value of the best set; the bound of linear programming where the search was cut short at
   * its limit of nodes.
   *
   * @param worth of each box; one of 0 or less is not on offer, nor one too big alone
   */
  double solve(double[] worth, long volumeRoom, long loadRoom) {
    double root = arrange(worth, volumeRoom, loadRoom);
    work += worth.length;
    bestValue = 0;
    Arrays.fill(best, false);
    nodes = 0;
    search(0, 0, 0, 1.0, volumeRoom, loadRoom);
    work += nodes;
    return nodes > NODE_LIMIT ? root : bestValue;
  }

  /** True if the set found holds the box. */
  boolean holds(int box) {
    return best[box];
  }

  /** Work done so far: boxes looked at and sets tried. */
  long work() {
    return work;
  }

  /** Sorts by worth for the use of the surrogate limit; gives the fractional bound. */
  private double arrange(double[] worth, long volumeRoom, long loadRoom) {
    double perVolume = mix / Math.max(1, volumeRoom);
    double perLoad = (1 - mix) / Math.max(1, loadRoom);
    count = 0;
    for (int i = 0; i < order.length; i++) {
      int box = order[i];
      boolean offered = worth[box] > 0 && boxVolume[box] <= volumeRoom && boxLoad[box] <= loadRoom;
      double needs = perVolume * boxVolume[box] + perLoad * boxLoad[box];
      double rank = !offered ? -1 : needs > 0 ? worth[box] / needs : Double.MAX_VALUE;
      int at = i;
      while (at > 0 && ratio[at - 1] < rank) {
        ratio[at] = ratio[at - 1];
        order[at] = order[at - 1];
        at--;
      }
      ratio[at] = rank;
      order[at] = box;
      count += offered ? 1 : 0;
    }
    double volumes = 0;
    double loads = 0;
    int split = 0;
    for (int i = 0; i < count; i++) {
      int box = order[i];
      value[i] = worth[box];
      volume[i] = boxVolume[box];
      load[i] = boxLoad[box];
      use[i] = perVolume * volume[i] + perLoad * load[i];
      useBefore[i + 1] = useBefore[i] + use[i];
      valueBefore[i + 1] = valueBefore[i] + value[i];
      if (useBefore[i + 1] <= 1.0) {
        split = i + 1;
        volumes += volume[i];
        loads += load[i];
      }
    }
    double lean = volumes / Math.max(1, volumeRoom) > loads / Math.max(1, loadRoom) ? 1 : -1;
    mix = Math.min(1, Math.max(0, mix + lean * MIX_STEP));
    return fractional(0, split, 1.0);
  }

  /** Value of the boxes from {@code from} where {@code split} is the first that goes in partly. */
  private double fractional(int from, int split, double room) {
    double sum = valueBefore[split] - valueBefore[from];
    return split == count
        ? sum
        : sum + ratio[split] * (room - (useBefore[split] - useBefore[from]));
  }

  private void search(
      int from, int parentSplit, double sum, double room, long volumeLeft, long loadLeft) {
    if (sum > bestValue) {
      bestValue = sum;
      System.arraycopy(taken, 0, best, 0, best.length);
    }
    nodes++;
    int split = parentSplit;
    for (int i = from; i < count && nodes <= NODE_LIMIT; i++) {
      if (volume[i] > volumeLeft || load[i] > loadLeft) {
        continue;
      }
      split = Math.max(split, i);
      while (split < count && useBefore[split + 1] - useBefore[i] <= room) {
        split++;
      }
      if (sum + fractional(i, split, room) <= bestValue) {
        return;
      }
      taken[order[i]] = true;
      search(
          i + 1, split, sum + value[i], room - use[i], volumeLeft - volume[i], loadLeft - load[i]);
      taken[order[i]] = false;
    }
  }
}
