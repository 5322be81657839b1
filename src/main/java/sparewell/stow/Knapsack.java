package sparewell.stow;

import java.util.Arrays;

/**
 * The most valuable set of boxes for one place under its volume and load limits: depth-first branch
 * and bound. The bound is the fractional knapsack over one surrogate limit, a mix of the two that
 * is chosen to be tight (its best mix gives the bound of linear programming). One for each place:
 * it remembers the order of the boxes by worth and the mix, which change little from call to call.
 */
final class Knapsack {
  private static final double MIX_STEP = 0.06;
  private static final long NODE_LIMIT = 3_000;

  /** All boxes, the most valuable for their size first when last looked at. */
  private final int[] sequence;

  /** -1 for the boxes of the order to be remembered. */
  private final int[] listed;

  private final int[] box;
  private final double[] value;
  private final double[] ratio;
  private final double[] use;
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
  private double mixStep = MIX_STEP;
  private long nodes;
  private double tolerance;
  private long work;

  Knapsack(int most) {
    sequence = new int[most];
    for (int i = 0; i < most; i++) {
      sequence[i] = i;
    }
    listed = new int[most];
    box = new int[most];
    value = new double[most];
    ratio = new double[most];
    use = new double[most];
    volume = new long[most];
    load = new long[most];
    useBefore = new double[most + 1];
    valueBefore = new double[most + 1];
    taken = new boolean[most];
    best = new boolean[most];
  }

  /** How much less than the most valuable set will do; added to the bound. */
  void tolerance(double value) {
    tolerance = value;
  }

  /** Starts the surrogate limit at that share of volume. */
  void mix(double share) {
    mix = Math.min(1 - MIX_STEP, Math.max(MIX_STEP, share));
  }

  /** Begins anew: nothing is on offer. */
  void clear() {
    count = 0;
    work += sequence.length;
  }

  /** The box to offer at that turn, so that they come nearly in order. */
  int turn(int index) {
    return sequence[index];
  }

  /**
   * Offers a box; one without value or too big alone is left out.
   *
   * @param one its index
   * @param worth kg m
   */
  void offer(int one, double worth, long boxVolume, long boxLoad, long volumeRoom, long loadRoom) {
    if (worth > 0 && boxVolume <= volumeRoom && boxLoad <= loadRoom) {
      box[count] = one;
      value[count] = worth;
      volume[count] = boxVolume;
      load[count] = boxLoad;
      count++;
    }
  }

  /**
   * An upper bound on the value of the best set: at most the tolerance above it unless the search
   * was cut short at its limit of nodes, then the bound of linear programming.
   *
   * @param volumeRoom as given with the offers, mm3
   * @param loadRoom as given with the offers, mg
   */
  double solve(long volumeRoom, long loadRoom) {
    long allVolume = 0;
    long allLoad = 0;
    double all = 0;
    for (int i = 0; i < count; i++) {
      allVolume += volume[i];
      allLoad += load[i];
      all += value[i];
    }
    boolean volumeBinds = allVolume > volumeRoom;
    boolean loadBinds = allLoad > loadRoom;
    if (!volumeBinds && !loadBinds) {
      Arrays.fill(best, 0, count, true);
      bestValue = all;
      return all;
    }
    double root;
    if (volumeBinds && loadBinds) {
      root = arranged(mix, volumeRoom, loadRoom);
      double other = Math.min(1 - MIX_STEP, Math.max(MIX_STEP, mix + mixStep));
      double there = arranged(other, volumeRoom, loadRoom);
      if (there < root) {
        root = there;
        mix = other;
      } else {
        mixStep = -mixStep;
        root = arranged(mix, volumeRoom, loadRoom);
      }
    } else {
      root = arranged(volumeBinds ? 1 : 0, volumeRoom, loadRoom);
    }
    bestValue = 0;
    Arrays.fill(best, 0, count, false); // no set at all, where the tolerance allows for that
    nodes = 0;
    search(0, 0, 0, 1.0, volumeRoom, loadRoom);
    work += nodes;
    return nodes > NODE_LIMIT ? root : Math.min(root, bestValue + tolerance);
  }

  /** Remembers the order for the next time; only while the offers came from {@link #turn}. */
  void remember() {
    int at = sequence.length;
    for (int i = 0; i < count; i++) {
      listed[box[i]] = -1;
    }
    // the others keep their order behind those that were offered
    for (int i = sequence.length - 1; i >= 0; i--) {
      if (listed[sequence[i]] >= 0) {
        sequence[--at] = sequence[i];
      }
    }
    for (int i = 0; i < count; i++) {
      sequence[i] = box[i];
      listed[box[i]] = 0;
    }
  }

  /** Whether the set found holds the box of that index. */
  boolean holds(int index) {
    return best[index];
  }

  /** The box of that index, most valuable for its size first. */
  int boxAt(int index) {
    return box[index];
  }

  /** Boxes on offer that have worth and fit alone. */
  int count() {
    return count;
  }

  /** Work done so far: boxes looked at and sets tried. */
  long work() {
    return work;
  }

  /** Sorts by worth for the use of the surrogate limit; gives the fractional bound. */
  private double arranged(double share, long volumeRoom, long loadRoom) {
    double perVolume = share == 0 ? 0 : share / Math.max(1, volumeRoom);
    double perLoad = share == 1 ? 0 : (1 - share) / Math.max(1, loadRoom);
    for (int i = 0; i < count; i++) {
      double needs = perVolume * volume[i] + perLoad * load[i];
      double rank = needs <= 0 ? Double.MAX_VALUE : value[i] / needs;
      if (i > 0 && ratio[i - 1] < rank) {
        insert(i, rank, needs);
      } else {
        ratio[i] = rank;
        use[i] = needs;
      }
    }
    for (int i = 0; i < count; i++) {
      useBefore[i + 1] = useBefore[i] + use[i];
      valueBefore[i + 1] = valueBefore[i] + value[i];
    }
    int split = 0;
    while (split < count && useBefore[split + 1] <= 1.0) {
      split++;
    }
    return fractional(0, split, 1.0);
  }

  private void insert(int from, double rank, double needs) {
    int one = box[from];
    double worth = value[from];
    long boxVolume = volume[from];
    long boxLoad = load[from];
    int at = from;
    while (at > 0 && ratio[at - 1] < rank) {
      box[at] = box[at - 1];
      value[at] = value[at - 1];
      volume[at] = volume[at - 1];
      load[at] = load[at - 1];
      use[at] = use[at - 1];
      ratio[at] = ratio[at - 1];
      at--;
    }
    box[at] = one;
    value[at] = worth;
    volume[at] = boxVolume;
    load[at] = boxLoad;
    use[at] = needs;
    ratio[at] = rank;
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
      System.arraycopy(taken, 0, best, 0, from);
      Arrays.fill(best, from, count, false);
    }
    nodes++;
    int split = parentSplit;
    for (int i = from; i < count && nodes <= NODE_LIMIT; i++) {
      if (volume[i] > volumeLeft || load[i] > loadLeft) {
        continue;
      }
      split = split < i ? i : split;
      while (split < count && useBefore[split + 1] - useBefore[i] <= room) {
        split++;
      }
      if (sum + fractional(i, split, room) <= bestValue + tolerance) {
        return;
      }
      taken[i] = true;
      search(
          i + 1, split, sum + value[i], room - use[i], volumeLeft - volume[i], loadLeft - load[i]);
      taken[i] = false;
    }
  }
}
