package sparewell.posting;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sparewell.season.Place;
import sparewell.season.Season;

/** The angler's boxes and compartments by name, case aside. */
final class PlaceNames {
  private final Map<String, Place> places = new LinkedHashMap<>();

  PlaceNames(Season season) {
    season.boxes().forEach(box -> add(new Place(box.name(), box.compartment())));
    season.compartments().forEach(place -> add(new Place("", place.name())));
  }

  private void add(Place place) {
    places.putIfAbsent(place.name().toLowerCase(Locale.ROOT), place);
  }

  Optional<Place> find(String name) {
    return Optional.ofNullable(places.get(name.strip().toLowerCase(Locale.ROOT)));
  }
}
