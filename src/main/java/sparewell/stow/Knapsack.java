package sparewell.stow;

/**
 * The most valuable set of boxes for one place under its volume and load limits: depth-first branch
 * and bound. The bound is the fractional knapsack over one surrogate limit, a mix of the two that
 * is chosen to be tight (its best mix gives the bound of linear programming).
 */
final class Knapsack {
  private static final double MIX_STEP = 0.06;
  private static final long NODE_LIMIT = 3_000;

  private final int[] order;
  private final double[] value;
  private final double[] ratio;
  private final double[] use;
  private final long[] volume;
  private final long[] load;
  private final int[] id;
  private final double[] gain;
  private final long[] volumeOf;
  private final long[] loadOf;
  private final boolean[] taken;
  private final boolean[] best;
  private int count;
  private double bestValue;
  private double mix;
  private long nodes;
  private boolean cut;
  private double tolerance;
  private long work;

  Knapsack(int most) {
    order = new int[most];
    value = new double[most];
    ratio = new double[most];
    use = new double[most];
    volume = new long[most];
    load = new long[most];
    id = new int[most];
    gain = new double[most];
    volumeOf = new long[most];
    loadOf = new long[most];
    taken = new boolean[most];
    best = new boolean[most];
  }

  /** How much less than the most valuable set will do; added to the bound. */
  void tolerance(double value) {
    tolerance = value;
  }

  void clear() {
    count = 0;
  }

  /** Offers a box; one without value or too big alone is left out. */
  void offer(int box, double worth, long boxVolume, long boxLoad, long volumeRoom, long loadRoom) {
    if (worth > 0 && boxVolume <= volumeRoom && boxLoad <= loadRoom) {
      id[count] = box;
      gain[count] = worth;
      volumeOf[count] = boxVolume;
      loadOf[count] = boxLoad;
      count++;
    }
  }

  /** The share of volume in the surrogate limit that served best last. */
  double mix() {
    return mix;
  }

  /** An upper bound on the value of the best set; exact unless the search was cut short. */
  double solve(long volumeRoom, long loadRoom, double likelyMix) {
    long allVolume = 0;
    long allLoad = 0;
    double all = 0;
    for (int i = 0; i < count; i++) {
      allVolume += volumeOf[i];
      allLoad += loadOf[i];
      all += gain[i];
    }
    work += count + 1;
    boolean volumeBinds = allVolume > volumeRoom;
    boolean loadBinds = allLoad > loadRoom;
    if (!volumeBinds && !loadBinds) {
      for (int i = 0; i < count; i++) {
        order[i] = i;
        best[i] = true;
      }
      bestValue = all;
      return all;
    }
    if (volumeBinds && loadBinds) {
      double middle = Math.min(1 - MIX_STEP, Math.max(MIX_STEP, likelyMix));
      double least = Double.MAX_VALUE;
      for (int side = -1; side <= 1; side++) {
        arrange(middle + side * MIX_STEP, volumeRoom, loadRoom);
        double bound = fractional(0, 1.0);
        if (bound < least) {
          least = bound;
          mix = middle + side * MIX_STEP;
        }
      }
    } else {
      mix = volumeBinds ? 1 : 0;
    }
    arrange(mix, volumeRoom, loadRoom);
    double root = fractional(0, 1.0);
    bestValue = 0;
    for (int i = 0; i < count; i++) {
      best[i] = false;
      taken[i] = false;
    }
    nodes = 0;
    cut = false;
    search(0, 0, 1.0, volumeRoom, loadRoom);
    work += nodes;
    return cut ? root : Math.min(root, bestValue + tolerance);
  }

  /** Whether the set found holds the offered box of that index. */
  boolean holds(int index) {
    return best[index];
  }

  /** The box of that index in the set's order. */
  int boxAt(int index) {
    return id[order[index]];
  }

  int count() {
    return count;
  }

  long work() {
    return work;
  }

  private void arrange(double mix, long volumeRoom, long loadRoom) {
    double perVolume = mix == 0 ? 0 : mix / Math.max(1, volumeRoom);
    double perLoad = mix == 1 ? 0 : (1 - mix) / Math.max(1, loadRoom);
    for (int i = 0; i < count; i++) {
      double needs = perVolume * volumeOf[i] + perLoad * loadOf[i];
      double rank = needs <= 0 ? Double.MAX_VALUE : gain[i] / needs;
      int at = i;
      while (at > 0 && ratio[at - 1] < rank) {
        order[at] = order[at - 1];
        ratio[at] = ratio[at - 1];
        at--;
      }
      order[at] = i;
      ratio[at] = rank;
    }
    for (int i = 0; i < count; i++) {
      int box = order[i];
      value[i] = gain[box];
      volume[i] = volumeOf[box];
      load[i] = loadOf[box];
      use[i] = perVolume * volume[i] + perLoad * load[i];
    }
  }

  private double fractional(int from, double room) {
    double sum = 0;
    double left = room;
    for (int i = from; i < count; i++) {
      if (use[i] <= left) {
        left -= use[i];
        sum += value[i];
      } else {
        return sum + value[i] * left / use[i];
      }
    }
    return sum;
  }

  private void search(int from, double sum, double room, long volumeLeft, long loadLeft) {
    if (sum > bestValue) {
      bestValue = sum;
      System.arraycopy(taken, 0, best, 0, from);
      java.util.Arrays.fill(best, from, count, false);
    }
    if (nodes++ > NODE_LIMIT) {
      cut = true;
    }
    for (int i = from; i < count && !cut; i++) {
      if (sum + fractional(i, room) <= bestValue + tolerance) {
        return;
      }
      if (volume[i] <= volumeLeft && load[i] <= loadLeft) {
        taken[i] = true;
        search(i + 1, sum + value[i], room - use[i], volumeLeft - volume[i], loadLeft - load[i]);
        taken[i] = false;
      }
    }
  }
}
