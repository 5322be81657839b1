package sparewell.spares;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The packs that a budget pays for: first what saves most, then what only fills floors.
 *
 * @param packs the packs, in the order of the list
 * @param gapPieces most that another choice could save more
 */
record Basket(List<Pack> packs, double gapPieces) {
  /**
   * Fills a basket. The budget goes first to the packs that lower the expected shortage, so that
   * they save most; what is left fills floors.
   */
  static Basket fill(List<Pack> packs, long budget) {
    List<Pack> needed = packs.stream().filter(pack -> !pack.fills()).toList();
    PackKnapsack.Choice first = PackKnapsack.choose(needed, budget);
    List<Pack> chosen = topped(first.packs(), needed, budget);
    List<Pack> filling = packs.stream().filter(Pack::fills).toList();
    long left = budget - cost(chosen);
    PackKnapsack.Choice second = PackKnapsack.choose(filling, left);
    List<Pack> all = new ArrayList<>(chosen);
    all.addAll(topped(second.packs(), filling, left));
    return new Basket(inOrder(all, packs), first.gap() + second.gap());
  }

  static long cost(List<Pack> packs) {
    return packs.stream().mapToLong(Pack::costUnits).sum();
  }

  /** The chosen packs, exchanged for the first ones of each item, and what else fits, in order. */
  private static List<Pack> topped(List<Pack> chosen, List<Pack> all, long budget) {
    long left = budget - cost(chosen);
    int[] count = new int[all.stream().mapToInt(Pack::row).max().orElse(-1) + 1];
    chosen.forEach(pack -> count[pack.row()]++);
    List<Pack> kept = new ArrayList<>();
    for (Pack pack : all) {
      if (count[pack.row()] > 0) {
        count[pack.row()]--;
        kept.add(pack);
      } else if (pack.costUnits() <= left) {
        left -= pack.costUnits();
        kept.add(pack);
      }
    }
    return kept;
  }

  private static List<Pack> inOrder(List<Pack> chosen, List<Pack> order) {
    Set<Pack> set = new HashSet<>(chosen);
    return order.stream().filter(set::contains).toList();
  }
}
