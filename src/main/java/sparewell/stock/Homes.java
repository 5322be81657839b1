package sparewell.stock;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import sparewell.season.ItemId;
import sparewell.season.Place;

/**
 * Where pieces of an item belong aboard: in the place that holds most of the item, else most of its
 * style. A place listed with none counts too; of equals the first by name.
 */
public final class Homes {
  private static final Comparator<Place> BY_NAME =
      Comparator.comparing(Place::name).thenComparing(Place::compartment);

  private final Map<String, List<Holding>> byStyle;

  /**
   * Of a stock.
   *
   * @param except boxes that are no home, such as one that is packed anew for each event
   */
  public Homes(OnHand stock, Set<String> except) {
    byStyle =
        stock.holdings().stream()
            .filter(holding -> !holding.ashore() && !except.contains(holding.place().box()))
            .collect(Collectors.groupingBy(holding -> holding.item().style()));
  }

  /** The item's home; absent where nothing of its style lies aboard. */
  public Optional<Place> of(ItemId item) {
    List<Holding> style = byStyle.getOrDefault(item.style(), List.of());
    return fullest(style, holding -> holding.item().equals(item))
        .or(() -> fullest(style, holding -> true));
  }

  /** The place that holds most of these styles; absent where none of them lies aboard. */
  public Optional<Place> ofStyles(Collection<String> styles) {
    List<Holding> all =
        styles.stream().flatMap(name -> byStyle.getOrDefault(name, List.of()).stream()).toList();
    return fullest(all, holding -> true);
  }

  private static Optional<Place> fullest(List<Holding> holdings, Predicate<Holding> asked) {
    Map<Place, Integer> pieces = new LinkedHashMap<>();
    holdings.stream()
        .filter(asked)
        .forEach(holding -> pieces.merge(holding.place(), holding.pieces(), Integer::sum));
    return pieces.keySet().stream()
        .min(Comparator.comparing((Place place) -> -pieces.get(place)).thenComparing(BY_NAME));
  }
}
