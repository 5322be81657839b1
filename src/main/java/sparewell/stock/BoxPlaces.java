package sparewell.stock;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.season.Box;
import sparewell.season.BoxMove;
import sparewell.season.Compartment;
import sparewell.season.Place;
import sparewell.season.Season;

/** Tells places aboard from those ashore on any day, as boxes move. */
final class BoxPlaces {
  private final Map<String, Compartment> compartments;
  private final Map<String, Box> boxes;
  private final Map<String, List<BoxMove>> moves;

  BoxPlaces(Season season) {
    compartments = season.compartmentsByName();
    boxes = season.boxesByName();
    moves = season.boxMoves().stream().collect(Collectors.groupingBy(BoxMove::box));
  }

  /** True for home storage at the date of analysis. */
  boolean ashore(Place place) {
    Box box = boxes.get(place.box());
    return isAshore(box == null ? place.compartment() : box.compartment());
  }

  /** True for home storage on a day; a box moved on that day had been moved already. */
  boolean ashore(Place place, LocalDate day) {
    return moves.getOrDefault(place.box(), List.of()).stream()
        .filter(move -> move.date().isAfter(day))
        .min(Comparator.comparing(BoxMove::date))
        .map(next -> isAshore(next.from()))
        .orElseGet(() -> ashore(place));
  }

  private boolean isAshore(String compartment) {
    Compartment known = compartments.get(compartment);
    return known != null && known.ashore();
  }
}
