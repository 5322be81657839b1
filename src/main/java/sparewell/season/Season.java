package sparewell.season;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * All records up to the date of analysis, references resolved: every style, box, compartment and
 * trip named anywhere is in its list, in the same spelling. Of later records, only events are kept.
 *
 * <p>Boxes are in the compartments where they stand on that date; {@code boxMoves}, oldest first,
 * hold the earlier ones.
 *
 * <p>Losses may name a size or colour that is not in stock; {@code losses} then hold it as written
 * (empty where blank).
 */
public record Season(
    Settings settings,
    List<Style> styles,
    List<StockRow> stock,
    List<Box> boxes,
    List<Compartment> compartments,
    List<Trip> trips,
    List<StyleHours> styleHours,
    List<Loss> losses,
    List<Restock> restocks,
    List<Transfer> transfers,
    List<BoxMove> boxMoves,
    List<Recount> recounts,
    List<Event> events,
    List<FixedLoad> loads,
    Boat boat) {
  public Season {
    styles = List.copyOf(styles);
    stock = List.copyOf(stock);
    boxes = List.copyOf(boxes);
    compartments = List.copyOf(compartments);
    trips = List.copyOf(trips);
    styleHours = List.copyOf(styleHours);
    losses = List.copyOf(losses);
    restocks = List.copyOf(restocks);
    transfers = List.copyOf(transfers);
    boxMoves = List.copyOf(boxMoves);
    recounts = List.copyOf(recounts);
    events = List.copyOf(events);
    loads = List.copyOf(loads);
  }

  public Map<String, Style> stylesByName() {
    return index(styles, Style::name);
  }

  public Map<String, Box> boxesByName() {
    return index(boxes, Box::name);
  }

  public Map<String, Compartment> compartmentsByName() {
    return index(compartments, Compartment::name);
  }

  public Map<String, Trip> tripsById() {
    return index(trips, Trip::id);
  }

  /** True for home storage. */
  public boolean ashore(Place place) {
    return compartments.stream()
        .anyMatch(one -> one.ashore() && one.name().equals(place.compartment()));
  }

  /** True for an event that names a box which does not stand ashore. */
  public boolean packs(Event event) {
    Box box = boxesByName().get(event.box());
    return !event.box().isEmpty()
        && (box == null || !ashore(new Place(box.name(), box.compartment())));
  }

  /**
   * Events still to be fished, by date, those of a day by name: on or after the date of analysis,
   * and of that day itself only those whose trip is not logged yet.
   */
  public List<Event> eventsAhead() {
    return events.stream()
        .filter(event -> !event.date().isBefore(settings.asOf()) && !fished(event))
        .sorted(Comparator.comparing(Event::date).thenComparing(Event::name))
        .toList();
  }

  private boolean fished(Event event) {
    return trips.stream()
        .anyMatch(
            trip ->
                trip.date().equals(event.date())
                    && trip.days() >= event.days()
                    && events.stream()
                        .noneMatch(
                            other ->
                                !other.equals(event) && trip.id().equalsIgnoreCase(other.name())));
  }

  private static <T> Map<String, T> index(List<T> list, Function<T, String> key) {
    Map<String, T> map = new LinkedHashMap<>();
    for (T entry : list) {
      map.putIfAbsent(key.apply(entry), entry);
    }
    return map;
  }
}
