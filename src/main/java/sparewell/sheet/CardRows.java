package sparewell.sheet;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Place;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.stock.Holding;

/** Items and styles of the trip card, in their order. */
record CardRows(Results results, Typed typed, Optional<Event> event) {
  private static final int MOST_STYLES = 10;
  private static final int MOST_ITEMS = 24;

  /** A style that is likely to be thrown; the hours are absent without a plan. */
  record StyleRow(String style, Optional<Double> plannedHours) {}

  /** The event's box first, then the boat from the bow to the transom, place by place. */
  List<Holding> items() {
    Set<ItemId> wanted = new LinkedHashSet<>();
    event.ifPresent(
        one ->
            results.packing().lists().stream()
                .filter(list -> list.event().name().equals(one.name()))
                .flatMap(list -> list.lines().stream())
                .forEach(line -> wanted.add(line.item())));
    Set<String> styles = styles().stream().map(StyleRow::style).collect(Collectors.toSet());
    String box = event.map(Event::box).orElse("");
    List<Holding> aboard =
        results.packing().packed().holdings().stream()
            .filter(holding -> !holding.ashore() && holding.pieces() > 0)
            .filter(
                holding ->
                    holding.place().box().equals(box) && !box.isEmpty()
                        || wanted.contains(holding.item())
                        || styles.contains(holding.item().style()))
            .sorted(
                Comparator.comparing((Holding holding) -> !holding.place().box().equals(box))
                    .thenComparing(holding -> -fromTransom(holding))
                    .thenComparing(holding -> holding.place().name())
                    .thenComparing(Holding::item, ItemId.BY_MEASURE))
            .toList();
    List<ItemId> typedFor =
        typed.rows().stream()
            .filter(row -> row.table() == EntryTable.CARD_ITEMS)
            .map(row -> item(row.key()))
            .toList();
    Map<ItemId, Holding> rows = new LinkedHashMap<>();
    for (Holding holding : aboard) {
      if (rows.size() < MOST_ITEMS || typedFor.contains(holding.item())) {
        rows.putIfAbsent(holding.item(), holding);
      }
    }
    typedFor.forEach(item -> rows.putIfAbsent(item, gone(item)));
    return List.copyOf(rows.values());
  }

  private static Holding gone(ItemId item) {
    return new Holding(item, new Place("", ""), false, 0, Optional.empty());
  }

  /** The rows of the page that the angler has on paper, whatever is packed for the next event. */
  List<Holding> asPrinted() {
    return typed.carded().stream().map(CardRows::item).map(CardRows::gone).toList();
  }

  private static ItemId item(List<String> key) {
    return new ItemId(key.get(0), key.get(1), key.get(2));
  }

  private double fromTransom(Holding holding) {
    return results.season().compartments().stream()
        .filter(one -> one.name().equals(holding.place().compartment()))
        .mapToDouble(one -> one.fromTransom().micrometres())
        .findFirst()
        .orElse(0);
  }

  /** The event's plan, else the styles thrown most; and those that hours were typed for. */
  List<StyleRow> styles() {
    Map<String, Double> planned = new LinkedHashMap<>();
    event.stream()
        .flatMap(one -> one.plan().stream())
        .forEach(line -> planned.merge(line.style(), line.plannedHours(), Double::sum));
    Set<String> styles = new LinkedHashSet<>(planned.isEmpty() ? mostThrown() : planned.keySet());
    typed.rows().stream()
        .filter(row -> row.table() == EntryTable.CARD_STYLES)
        .forEach(row -> styles.add(row.key().get(0)));
    return styles.stream()
        .map(style -> new StyleRow(style, Optional.ofNullable(planned.get(style))))
        .toList();
  }

  /** The styles thrown most, then those lost most, then the others that are aboard, but no gear. */
  private List<String> mostThrown() {
    Map<String, Double> hours =
        results.season().styleHours().stream()
            .collect(
                Collectors.groupingBy(
                    StyleHours::style, Collectors.summingDouble(StyleHours::knownHours)));
    Map<String, Integer> lost =
        results.season().losses().stream()
            .collect(
                Collectors.groupingBy(
                    loss -> loss.item().style(), Collectors.summingInt(Loss::lostPieces)));
    Map<String, Style> styles = results.season().stylesByName();
    return results.onHand().holdings().stream()
        .filter(holding -> !holding.ashore() && holding.pieces() > 0)
        .map(holding -> holding.item().style())
        .distinct()
        .filter(
            style ->
                !styles.get(style).gear() || hours.containsKey(style) || lost.containsKey(style))
        .sorted(
            Comparator.comparing((String style) -> -hours.getOrDefault(style, 0.0))
                .thenComparing(style -> -lost.getOrDefault(style, 0))
                .thenComparing(Comparator.naturalOrder()))
        .limit(MOST_STYLES)
        .toList();
  }
}
