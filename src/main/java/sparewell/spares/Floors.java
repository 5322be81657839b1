package sparewell.spares;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import sparewell.season.Settings;
import sparewell.season.Style;
import sparewell.stock.OnHand.ItemStock;

/** Floors of the items of a style. */
final class Floors {
  private Floors() {}

  /** Pieces to carry at least; true where pieces needed at once raised them. */
  record Floor(int pieces, boolean forNeededAtOnce) {}

  /**
   * Floors of all items of one style, in their order.
   *
   * <p>Each is the item's, else the style's, else the setting's. Where together they are fewer than
   * the style needs at once, one piece after the other is added: first to items with pieces aboard,
   * then with pieces ashore, then to any; the item with the lowest floor first, so that what must
   * be bought is spread evenly. Expected losses play no part, so that asking for a wider chance
   * never lowers the count of any item.
   */
  static List<Floor> of(Settings settings, Style style, List<ItemStock> items) {
    int[] base =
        items.stream()
            .mapToInt(
                item ->
                    item.carryAtLeast()
                        .orElse(style.carryAtLeast().orElse(settings.carryAtLeast())))
            .toArray();
    int[] floor = base.clone();
    Comparator<Integer> easiestFirst =
        Comparator.comparingInt((Integer i) -> ease(floor[i], items.get(i)))
            .thenComparingInt(i -> floor[i]);
    int missing = floor.length == 0 ? 0 : style.neededTogether() - Arrays.stream(base).sum();
    for (; missing > 0; missing--) {
      floor[IntStream.range(0, floor.length).boxed().min(easiestFirst).orElseThrow()]++;
    }
    return IntStream.range(0, floor.length)
        .mapToObj(i -> new Floor(floor[i], floor[i] > base[i]))
        .toList();
  }

  private static int ease(int floor, ItemStock item) {
    return floor < item.aboard() ? 0 : floor < item.aboard() + item.ashore() ? 1 : 2;
  }
}
