package sparewell.event;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sparewell.season.Box;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.stock.Homes;
import sparewell.stock.OnHand;

/**
 * Where pieces go that are taken out of an event's box: home, else to their family, else into the
 * box aboard with the fewest pieces, as nothing tells the room in a box; of equals the first by
 * name.
 */
final class OutPlaces {
  private final Map<String, Style> styles;
  private final Homes homes;
  private final Optional<Place> emptiest;

  OutPlaces(Season season, OnHand stock, Set<String> emptied) {
    this.styles = season.stylesByName();
    this.homes = new Homes(stock, emptied);
    Map<Place, Integer> pieces = new HashMap<>();
    stock.holdings().forEach(one -> pieces.merge(one.place(), one.pieces(), Integer::sum));
    List<String> eventBoxes = season.events().stream().map(Event::box).toList();
    this.emptiest =
        season.boxes().stream()
            .filter(box -> !eventBoxes.contains(box.name()))
            .map(OutPlaces::place)
            .filter(place -> !place.compartment().isEmpty() && !season.ashore(place))
            .min(
                Comparator.comparing((Place place) -> pieces.getOrDefault(place, 0))
                    .thenComparing(Place::name));
  }

  private static Place place(Box box) {
    return new Place(box.name(), box.compartment());
  }

  /** The place for an item; absent where no box is left aboard. */
  Optional<Place> of(ItemId item) {
    return homes.of(item).or(() -> homes.ofStyles(family(item))).or(() -> emptiest);
  }

  private List<String> family(ItemId item) {
    String family = styles.get(item.style()).family();
    return styles.values().stream()
        .filter(style -> !family.isEmpty() && style.family().equals(family))
        .map(Style::name)
        .toList();
  }
}
