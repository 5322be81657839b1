package sparewell.event;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.event.FreePockets.Stay;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.spares.EventNeed;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;
import sparewell.stock.PieceMove;

/**
 * Packs for the events of the horizon.
 *
 * <p>First what each box is to hold is settled, event by event, from all that there is; then which
 * pieces go where. Out of a box whose pockets are counted goes what the pockets left over cannot
 * hold; out of another nothing is taken, as nothing is in the way.
 */
public final class EventPacker {
  private final Season season;
  private final OnHand onHand;
  private final Map<String, Style> styles;
  private final Map<ItemId, ItemStock> stock;
  private final Map<ItemId, Integer> taken = new LinkedHashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  private EventPacker(Season season, OnHand onHand) {
    this.season = season;
    this.onHand = onHand;
    this.styles = season.stylesByName();
    this.stock = onHand.itemsById();
  }

  /** An item that an event wants, and how many of its pieces a pocket holds. */
  record Wanted(EventNeed.Item need, int pieces, int perSlot) {}

  /** Contents that one event's box, if any, is to hold: wanted items, planned first, and others. */
  record Content(Event event, boolean boxed, Map<ItemId, Wanted> items, Map<ItemId, Stay> stays) {
    boolean emptied() {
      return boxed && event.slots().isPresent();
    }

    boolean isBox(Place place) {
      return boxed && place.box().equals(event.box());
    }

    int pieces(ItemId item) {
      Wanted wanted = items.get(item);
      return (wanted == null ? 0 : wanted.pieces()) + stay(item).pieces();
    }

    Stay stay(ItemId item) {
      return stays.getOrDefault(item, Stay.NONE);
    }

    int slots() {
      return items.values().stream()
              .mapToInt(item -> SlotFill.slots(item.pieces(), item.perSlot()))
              .sum()
          + stays.values().stream().mapToInt(Stay::slots).sum();
    }
  }

  /** The packing lists, from what is on hand with all that is brought and bought before. */
  public static EventPacking pack(Season season, OnHand onHand, List<EventNeed> needs) {
    EventPacker packer = new EventPacker(season, onHand);
    List<Content> contents = new ArrayList<>();
    Map<String, Event> boxes = new LinkedHashMap<>();
    for (EventNeed need : needs) {
      boolean boxed = packer.boxed(need.event());
      if (!boxed || boxes.putIfAbsent(need.event().box(), need.event()) == null) {
        contents.add(packer.content(need, boxed));
      }
    }
    packer.leave(contents, needs);
    PackMoves moves = new PackMoves(season, onHand, contents);
    List<Line> lines = moves.lines();
    List<PackingList> lists = new ArrayList<>();
    for (EventNeed need : needs) {
      lists.add(packer.list(need, contents, boxes.get(need.event().box()), lines));
    }
    OnHand packed =
        onHand.after(
            lines.stream().map(Line::move).flatMap(Optional<PieceMove>::stream).toList(),
            season::ashore);
    return new EventPacking(lists, lines, packed, packer.findings);
  }

  private boolean boxed(Event event) {
    boolean packed = season.packs(event);
    if (!packed && !event.box().isEmpty()) {
      findings.add(Finding.of(Code.EVENT_BOX_ASHORE, event.origin(), event.box(), event.name()));
    }
    return packed;
  }

  private Content content(EventNeed need, boolean boxed) {
    List<EventNeed.Item> items =
        need.items().stream()
            .filter(item -> item.wanted() > 0)
            .sorted(Comparator.comparing((EventNeed.Item item) -> !item.inPlan()))
            .toList();
    List<Integer> limits = new ArrayList<>();
    List<Integer> perSlot = new ArrayList<>();
    for (EventNeed.Item item : items) {
      Style style = styles.get(item.item().style());
      // One item may share a pocket with itself; packs take one each.
      perSlot.add(style.countedInPacks() ? style.piecesPerPack() : Math.max(1, item.wanted()));
      ItemStock there = stock.get(item.item());
      int free = there.aboard() + there.ashore() - taken.getOrDefault(item.item(), 0);
      limits.add(Math.min(item.wanted(), Math.max(0, free)));
    }
    OptionalInt slots = need.event().slots();
    List<Integer> pieces =
        slots.isPresent() ? SlotFill.fill(items, limits, perSlot, slots.getAsInt()) : limits;
    Map<ItemId, Wanted> wanted = new LinkedHashMap<>();
    for (int i = 0; i < items.size(); i++) {
      ItemId item = items.get(i).item();
      wanted.put(item, new Wanted(items.get(i), pieces.get(i), perSlot.get(i)));
      if (boxed) {
        taken.merge(item, pieces.get(i), Integer::sum);
      }
    }
    return new Content(need.event(), boxed, wanted, Map.of());
  }

  /** Fills pockets left over with what lies in them, once all events have what they want. */
  private void leave(List<Content> contents, List<EventNeed> needs) {
    FreePockets pockets = new FreePockets(season, onHand, emptied(contents));
    for (EventNeed need : needs) {
      contents.replaceAll(
          content -> {
            if (content.event() != need.event() || !content.emptied()) {
              return content;
            }
            Map<ItemId, Stay> stays = pockets.of(need, content, taken);
            stays.forEach((item, stay) -> taken.merge(item, stay.pieces(), Integer::sum));
            return new Content(content.event(), true, content.items(), stays);
          });
    }
  }

  /** Boxes out of which goes what the pockets do not hold. */
  static Set<String> emptied(List<Content> contents) {
    return contents.stream()
        .filter(Content::emptied)
        .map(content -> content.event().box())
        .collect(Collectors.toSet());
  }

  private PackingList list(EventNeed need, List<Content> contents, Event holder, List<Line> lines) {
    Event event = need.event();
    Optional<Content> own =
        contents.stream().filter(content -> content.event() == event).findFirst();
    if (own.isEmpty()) {
      return new PackingList(event, true, Optional.of(holder), event.slots(), 0, List.of());
    }
    Content content = own.get();
    int wanted = 0;
    for (Wanted item : content.items().values()) {
      wanted += SlotFill.slots(item.need().wanted(), item.perSlot());
    }
    if (event.slots().isPresent() && wanted > event.slots().getAsInt()) {
      findings.add(
          Finding.of(
              Code.EVENT_BOX_NOT_ENOUGH_SLOTS,
              event.origin().under("Slots"),
              event.name(),
              wanted,
              event.slots().getAsInt()));
    }
    return new PackingList(
        event,
        content.boxed(),
        Optional.empty(),
        event.slots(),
        content.slots(),
        lines.stream().filter(line -> line.event().equals(event.name())).toList());
  }
}
