package sparewell.stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import sparewell.season.Compartment;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.Style;

/**
 * Places aboard where items belong: the place that holds most of the item, else of its style, else
 * of its family. A place listed with none counts too; of equals the first by name.
 *
 * <p>A family of which nothing is aboard goes, all of it, into the box with the fewest pieces, as
 * nothing tells the room in a box; into an event's box only where there is no other, and loose into
 * a compartment where there is no box.
 */
public final class Homes {
  private final Map<String, String> families;
  private final Map<String, List<Holding>> byFamily;
  private final Map<String, Place> ofNewFamilies = new HashMap<>();

  /** Homes in a stock; {@code except} are boxes that are none, as they are packed anew. */
  public Homes(Season season, OnHand stock, Set<String> except) {
    families = season.styles().stream().collect(Collectors.toMap(Style::name, Style::family));
    byFamily =
        stock.holdings().stream()
            .filter(holding -> !holding.ashore() && !except.contains(holding.place().box()))
            .collect(Collectors.groupingBy(holding -> family(holding.item())));
    Map<Place, Integer> pieces = new HashMap<>();
    stock.holdings().forEach(one -> pieces.merge(one.place(), one.pieces(), Integer::sum));
    Map<String, Integer> ashore = new TreeMap<>();
    stock.items().forEach(one -> ashore.merge(family(one.item()), one.ashore(), Integer::sum));
    ashore.keySet().removeAll(byFamily.keySet());
    List<Place> free = free(season, except);
    ashore.forEach(
        (family, coming) ->
            free.stream()
                .min(Comparator.comparing(place -> pieces.getOrDefault(place, 0)))
                .ifPresent(
                    place -> {
                      ofNewFamilies.put(family, place);
                      pieces.merge(place, Math.max(1, coming), Integer::sum);
                    }));
  }

  private String family(ItemId item) {
    return families.get(item.style());
  }

  /** The places aboard to choose from, by name: boxes, else events' boxes, else compartments. */
  private static List<Place> free(Season season, Set<String> except) {
    Set<String> events = season.events().stream().map(Event::box).collect(Collectors.toSet());
    List<Place> boxes =
        season.boxes().stream()
            .filter(box -> !except.contains(box.name()))
            .map(box -> new Place(box.name(), box.compartment()))
            .filter(place -> !place.compartment().isEmpty() && !season.ashore(place))
            .sorted(Place.BY_NAME)
            .toList();
    List<Place> free = new ArrayList<>(boxes);
    free.removeIf(place -> events.contains(place.box()));
    if (free.isEmpty()) {
      free = boxes;
    }
    return free.isEmpty()
        ? season.compartments().stream()
            .filter(place -> !place.ashore())
            .map(Compartment::name)
            .sorted()
            .map(name -> new Place("", name))
            .toList()
        : free;
  }

  public Optional<Place> of(ItemId item) {
    return fullest(item, holding -> holding.item().equals(item))
        .or(() -> fullest(item, holding -> holding.item().style().equals(item.style())))
        .or(() -> fullest(item, holding -> true))
        .or(() -> Optional.ofNullable(ofNewFamilies.get(family(item))));
  }

  /** True where any place would do as well: nothing of its family has a place aboard. */
  public boolean open(ItemId item) {
    return !byFamily.containsKey(family(item));
  }

  /** True where something of the item's style has a place aboard already. */
  public boolean holdStyle(ItemId item) {
    return fullest(item, holding -> holding.item().style().equals(item.style())).isPresent();
  }

  private Optional<Place> fullest(ItemId item, Predicate<Holding> asked) {
    Map<Place, Integer> pieces = new LinkedHashMap<>();
    byFamily.getOrDefault(family(item), List.of()).stream()
        .filter(asked)
        .forEach(holding -> pieces.merge(holding.place(), holding.pieces(), Integer::sum));
    return pieces.keySet().stream()
        .min(
            Comparator.comparing((Place place) -> -pieces.get(place)).thenComparing(Place.BY_NAME));
  }
}
