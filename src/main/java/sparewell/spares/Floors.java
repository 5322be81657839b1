package sparewell.spares;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
    int together = Arrays.stream(base).sum();
    for (int missing = style.neededTogether() - together; missing > 0; missing--) {
      int best = -1;
      for (int i = 0; i < floor.length; i++) {
        if (best < 0 || before(i, best, floor, items)) {
          best = i;
        }
      }
      if (best >= 0) {
        floor[best]++;
      }
    }
    List<Floor> floors = new ArrayList<>();
    for (int i = 0; i < floor.length; i++) {
      floors.add(new Floor(floor[i], floor[i] > base[i]));
    }
    return floors;
  }

  private static boolean before(int i, int best, int[] floor, List<ItemStock> items) {
    int mine = ease(floor[i], items.get(i));
    int other = ease(floor[best], items.get(best));
    return mine < other || mine == other && floor[i] < floor[best];
  }

  private static int ease(int floor, ItemStock item) {
    return floor < item.aboard() ? 0 : floor < item.aboard() + item.ashore() ? 1 : 2;
  }
}
