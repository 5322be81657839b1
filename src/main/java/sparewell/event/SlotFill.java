package sparewell.event;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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

  /**
   * Pieces packed of each item.
   *
   * @param limits most pieces to pack of each
   * @param perSlot pieces of each that one pocket holds
   */
  static List<Integer> fill(
      List<EventNeed.Item> needs, List<Integer> limits, List<Integer> perSlot, int slots) {
    SlotFill fill = new SlotFill(needs, limits, perSlot);
    int left = slots - fill.oneOfEachStyle(slots);
    while (left > 0 && fill.addBest()) {
      left--;
    }
    List<Integer> pieces = new ArrayList<>();
    for (int count : fill.packed) {
      pieces.add(count);
    }
    return pieces;
  }

  static int slots(int pieces, int perSlot) {
    return (pieces + perSlot - 1) / perSlot;
  }

  private int oneOfEachStyle(int slots) {
    int used = 0;
    Set<String> served = new HashSet<>();
    while (used < slots) {
      int best = -1;
      for (int i = 0; i < packed.length; i++) {
        if (needs.get(i).inPlan()
            && limits.get(i) > 0
            && !served.contains(needs.get(i).item().style())
            && (best < 0 || weight(i) > weight(best))) {
          best = i;
        }
      }
      if (best < 0) {
        break;
      }
      served.add(needs.get(best).item().style());
      add(best);
      used++;
    }
    return used;
  }

  private double weight(int i) {
    return needs.get(i).importance() * needs.get(i).losses().mean();
  }

  private boolean addBest() {
    int best = -1;
    for (int i = 0; i < packed.length; i++) {
      if (packed[i] < limits.get(i) && (best < 0 || saved(i) > saved(best))) {
        best = i;
      }
    }
    if (best < 0) {
      return false;
    }
    add(best);
    return true;
  }

  private double saved(int i) {
    EventNeed.Item need = needs.get(i);
    return need.importance()
        * (need.losses().expectedShortage(packed[i])
            - need.losses().expectedShortage(Math.min(limits.get(i), packed[i] + perSlot.get(i))));
  }

  private void add(int i) {
    packed[i] = Math.min(limits.get(i), packed[i] + perSlot.get(i));
  }
}
