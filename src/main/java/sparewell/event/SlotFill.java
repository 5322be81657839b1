package sparewell.event;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import sparewell.spares.EventNeed;

/**
 * Shares the pockets of a box between items.
 *
 * <p>One pocket first for each planned style, since what is not there cannot be thrown; then always
 * the pocket with the largest fall of importance-weighted expected shortage. All pockets count the
 * same and the shortage is convex, so that order is best (Fox 1966, from memory).
 */
final class SlotFill {
  private final List<EventNeed.Item> needs;
  private final List<Integer> limits;
  private final List<Integer> perSlot;
  private final int[] packed;

  private SlotFill(List<EventNeed.Item> needs, List<Integer> limits, List<Integer> perSlot) {
    this.needs = needs;
    this.limits = limits;
    this.perSlot = perSlot;
    this.packed = new int[needs.size()];
  }

  /** Pieces packed of each item, at most its limit; a pocket holds {@code perSlot} of them. */
  static List<Integer> fill(
      List<EventNeed.Item> needs, List<Integer> limits, List<Integer> perSlot, int slots) {
    SlotFill fill = new SlotFill(needs, limits, perSlot);
    int left = slots;
    while (left > 0 && fill.addPocket()) {
      left--;
    }
    return Arrays.stream(fill.packed).boxed().toList();
  }

  static int slots(int pieces, int perSlot) {
    return (pieces + perSlot - 1) / perSlot;
  }

  private boolean addPocket() {
    return addBest(this::unserved, i -> needs.get(i).importance() * needs.get(i).losses().mean())
        || addBest(i -> packed[i] < limits.get(i), this::saved);
  }

  /** True for a planned item of whose style nothing is packed yet. */
  private boolean unserved(int i) {
    String style = needs.get(i).item().style();
    return needs.get(i).inPlan()
        && limits.get(i) > 0
        && IntStream.range(0, packed.length)
            .noneMatch(j -> packed[j] > 0 && needs.get(j).item().style().equals(style));
  }

  /** Fills a pocket with the open item of the largest worth, of equals the first. */
  private boolean addBest(IntPredicate open, IntToDoubleFunction worth) {
    int best = -1;
    for (int i = 0; i < packed.length; i++) {
      if (open.test(i) && (best < 0 || worth.applyAsDouble(i) > worth.applyAsDouble(best))) {
        best = i;
      }
    }
    if (best >= 0) {
      packed[best] = Math.min(limits.get(best), packed[best] + perSlot.get(best));
    }
    return best >= 0;
  }

  private double saved(int i) {
    EventNeed.Item need = needs.get(i);
    return need.importance()
        * (need.losses().expectedShortage(packed[i])
            - need.losses().expectedShortage(Math.min(limits.get(i), packed[i] + perSlot.get(i))));
  }
}
