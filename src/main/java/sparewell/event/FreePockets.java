package sparewell.event;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sparewell.event.EventPacker.Content;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.spares.EventNeed;
import sparewell.stock.Holding;
import sparewell.stock.Homes;
import sparewell.stock.OnHand;

/**
 * Chooses what may stay in an event's box beyond what the event wants, as pockets are free.
 *
 * <p>First stays what saves most expected shortage, then what has its only place there, such as
 * pliers or a scale, then what matters most.
 */
final class FreePockets {
  /** Pieces short, weighted, that count as none: as for a pack that only fills a floor. */
  private static final double NO_USE = 0.005;

  private final Map<String, Style> styles;
  private final OnHand onHand;
  private final Homes elsewhere;

  FreePockets(Season season, OnHand onHand, Set<String> emptied) {
    this.styles = season.stylesByName();
    this.onHand = onHand;
    this.elsewhere = new Homes(season, onHand, emptied);
  }

  /** Pieces of an item that stay, and the pockets they fill beyond those of the wanted pieces. */
  record Stay(int pieces, int slots) {
    static final Stay NONE = new Stay(0, 0);
  }

  /** Pieces that stay in a box; {@code spoken} are those that any box is to hold already. */
  Map<ItemId, Stay> of(EventNeed need, Content content, Map<ItemId, Integer> spoken) {
    Map<ItemId, Integer> surplus = surplus(content, spoken);
    Map<ItemId, EventNeed.Item> needs =
        need.items().stream().collect(Collectors.toMap(EventNeed.Item::item, item -> item));
    Comparator<ItemId> leastFirst =
        Comparator.comparingDouble(
                (ItemId item) -> use(needs.get(item), content.pieces(item), surplus.get(item)))
            .thenComparing(item -> !elsewhere.holdStyle(item))
            .thenComparingDouble(item -> styles.get(item.style()).importance());
    List<ItemId> order =
        surplus.keySet().stream()
            .sorted(leastFirst.reversed().thenComparing(Comparator.naturalOrder()))
            .toList();
    int free = content.event().slots().orElseThrow() - content.slots();
    Map<ItemId, Stay> stays = new LinkedHashMap<>();
    for (ItemId item : order) {
      Stay stay = stay(styles.get(item.style()), content.pieces(item), surplus.get(item), free);
      if (stay.pieces() > 0) {
        stays.put(item, stay);
        free -= stay.slots();
      }
    }
    return stays;
  }

  private Map<ItemId, Integer> surplus(Content content, Map<ItemId, Integer> spoken) {
    Map<ItemId, Integer> there = new TreeMap<>();
    for (Holding holding : onHand.holdings()) {
      if (content.isBox(holding.place())) {
        there.merge(holding.item(), holding.pieces(), Integer::sum);
      }
    }
    for (OnHand.ItemStock item : onHand.items()) {
      int unspoken = item.aboard() + item.ashore() - spoken.getOrDefault(item.item(), 0);
      there.computeIfPresent(
          item.item(), (id, pieces) -> Math.min(pieces - content.pieces(id), unspoken));
    }
    there.values().removeIf(pieces -> pieces <= 0);
    return there;
  }

  private static double use(EventNeed.Item need, int pieces, int more) {
    if (need == null) {
      return 0;
    }
    double saved =
        need.importance()
            * (need.losses().expectedShortage(pieces)
                - need.losses().expectedShortage(pieces + more));
    return saved < NO_USE ? 0 : saved;
  }

  /** Packs take a pocket each; single pieces that are not wanted share one. */
  private static Stay stay(Style style, int wanted, int surplus, int free) {
    if (!style.countedInPacks()) {
      return free > 0 ? new Stay(surplus, 1) : Stay.NONE;
    }
    int perPack = style.piecesPerPack();
    int used = SlotFill.slots(wanted, perPack);
    int pieces = Math.min(surplus, (used + free) * perPack - wanted);
    return new Stay(pieces, SlotFill.slots(wanted + pieces, perPack) - used);
  }
}
