package sparewell.event;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.spares.EventNeed;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;

/** Packs for the events of the horizon from what is aboard or ashore. */
public final class EventPacker {
  private final Map<String, Style> styles;
  private final Map<ItemId, List<Holding>> holdings;
  private final List<Finding> findings = new ArrayList<>();

  private EventPacker(Season season, OnHand onHand) {
    this.styles = season.stylesByName();
    this.holdings = onHand.holdings().stream().collect(Collectors.groupingBy(Holding::item));
  }

  /** The packing lists; each event is packed by itself, from all that is on hand now. */
  public static EventPacking pack(Season season, OnHand onHand, List<EventNeed> needs) {
    EventPacker packer = new EventPacker(season, onHand);
    List<PackingList> lists = needs.stream().map(packer::list).toList();
    return new EventPacking(lists, packer.findings);
  }

  private PackingList list(EventNeed need) {
    List<EventNeed.Item> items =
        need.items().stream()
            .filter(item -> item.wanted() > 0)
            .sorted(Comparator.comparing((EventNeed.Item item) -> !item.inPlan()))
            .toList();
    List<Integer> limits = new ArrayList<>();
    List<Integer> perSlot = new ArrayList<>();
    int slotsWanted = 0;
    for (EventNeed.Item item : items) {
      Style style = styles.get(item.item().style());
      int each = style.countedInPacks() ? style.piecesPerPack() : 1;
      perSlot.add(each);
      limits.add(Math.min(item.wanted(), onHandPieces(item.item())));
      slotsWanted += SlotFill.slots(item.wanted(), each);
    }
    Event event = need.event();
    OptionalInt slots = event.box().isEmpty() ? OptionalInt.empty() : event.slots();
    List<Integer> packed =
        slots.isPresent()
            ? SlotFill.fill(items, limits, perSlot, slots.getAsInt())
            : List.copyOf(limits);
    int slotsUsed = 0;
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      slotsUsed += SlotFill.slots(packed.get(i), perSlot.get(i));
      lines.addAll(lines(event, items.get(i), packed.get(i)));
    }
    if (slots.isPresent() && slotsWanted > slots.getAsInt()) {
      findings.add(
          Finding.of(
              Code.EVENT_BOX_NOT_ENOUGH_SLOTS,
              event.origin().under("Slots"),
              event.name(),
              slotsWanted,
              slots.getAsInt()));
    }
    return new PackingList(event, slots, slotsUsed, slotsWanted, placeByPlace(lines));
  }

  /**
   * What is in the box already, then place by place aboard and ashore so that each is opened once,
   * and last what cannot be packed.
   */
  private static List<Line> placeByPlace(List<Line> lines) {
    List<Optional<Place>> places = lines.stream().map(Line::from).distinct().toList();
    return lines.stream()
        .sorted(
            Comparator.comparing((Line line) -> line.pieces() == 0)
                .thenComparing(line -> !line.inBox())
                .thenComparing(Line::ashore)
                .thenComparingInt(line -> places.indexOf(line.from())))
        .toList();
  }

  private int onHandPieces(ItemId item) {
    return of(item).stream().mapToInt(Holding::pieces).sum();
  }

  private List<Holding> of(ItemId item) {
    return holdings.getOrDefault(item, List.of());
  }

  /** One line for each place the pieces come from: the event's box, aboard, ashore; most first. */
  private List<Line> lines(Event event, EventNeed.Item need, int packed) {
    List<Holding> sources =
        of(need.item()).stream()
            .sorted(
                Comparator.comparing((Holding holding) -> !inBox(event, holding))
                    .thenComparing(Holding::ashore)
                    .thenComparing(Comparator.comparingInt(Holding::pieces).reversed()))
            .toList();
    double runOut = need.losses().above(packed);
    int missing = need.wanted() - packed;
    boolean noSlot = missing > 0 && onHandPieces(need.item()) > packed;
    List<Line> lines = new ArrayList<>();
    int left = packed;
    for (Holding source : sources) {
      int pieces = Math.min(left, source.pieces());
      if (pieces > 0) {
        left -= pieces;
        lines.add(
            new Line(
                event.name(),
                need.item(),
                pieces,
                Optional.of(source.place()),
                source.ashore(),
                inBox(event, source),
                runOut,
                left == 0 ? missing : 0,
                noSlot));
      }
    }
    if (lines.isEmpty()) {
      lines.add(
          new Line(
              event.name(),
              need.item(),
              0,
              Optional.empty(),
              false,
              false,
              runOut,
              missing,
              noSlot));
    }
    return lines;
  }

  private static boolean inBox(Event event, Holding holding) {
    return !event.box().isEmpty() && holding.place().box().equals(event.box());
  }
}
