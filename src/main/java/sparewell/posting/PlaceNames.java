package sparewell.posting;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Season;

/** The angler's boxes and compartments by name, case aside. */
final class PlaceNames {
  private final Map<String, String> names = new LinkedHashMap<>();

  PlaceNames(Season season) {
    season.boxes().stream().map(Box::name).forEach(this::add);
    season.compartments().stream().map(Compartment::name).forEach(this::add);
  }

  private void add(String name) {
    names.putIfAbsent(name.toLowerCase(Locale.ROOT), name);
  }

  Optional<String> find(String name) {
    return Optional.ofNullable(names.get(name.strip().toLowerCase(Locale.ROOT)));
  }
}
