package sparewell.season;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Sorts the records of a season, so that the same rows in another order give the same figures:
 * styles by family, compartments from the bow aft with those ashore last, dated records by date,
 * all others by name. Box moves and counts of one day keep their order, because the lower row
 * counts.
 */
public final class SeasonOrder {
  private final Map<String, Integer> styles = new HashMap<>();
  private final Map<String, Integer> trips = new HashMap<>();

  private SeasonOrder() {}

  public static Season of(Season season) {
    return new SeasonOrder().ordered(season);
  }

  private Season ordered(Season season) {
    List<Style> byFamily =
        sorted(season.styles(), Comparator.comparing(Style::family).thenComparing(Style::name));
    byFamily.forEach(style -> styles.put(style.name(), styles.size()));
    List<Trip> byDate =
        sorted(season.trips(), Comparator.comparing(Trip::date).thenComparing(Trip::id));
    byDate.forEach(trip -> trips.put(trip.id(), trips.size()));
    return new Season(
        season.settings(),
        byFamily,
        sorted(
            season.stock(),
            items(StockRow::item)
                .thenComparing(row -> row.place().name())
                .thenComparing(row -> row.countedOn().map(Object::toString).orElse(""))
                .thenComparing(StockRow::countedPieces)),
        sorted(season.boxes(), Comparator.comparing(box -> box.name())),
        sorted(season.compartments(), bowToStern()),
        byDate,
        sorted(season.styleHours(), byTripAndStyle()),
        sorted(season.losses(), byTripAndItem()),
        sorted(
            season.restocks(),
            Comparator.comparing(Restock::date)
                .thenComparing(items(Restock::item))
                .thenComparing(row -> row.place().name())
                .thenComparing(Restock::addedPieces)),
        sorted(
            season.transfers(),
            Comparator.comparing(Transfer::date)
                .thenComparing(items(Transfer::item))
                .thenComparing(row -> row.from().name())
                .thenComparing(row -> row.to().name())),
        sorted(season.boxMoves(), Comparator.comparing(BoxMove::date).thenComparing(BoxMove::box)),
        sorted(
            season.recounts(),
            Comparator.comparing(Recount::date)
                .thenComparing(items(Recount::item))
                .thenComparing(row -> row.place().name())),
        sorted(season.events(), Comparator.comparing(Event::date).thenComparing(Event::name))
            .stream()
            .map(this::ordered)
            .toList(),
        sorted(
            season.loads(),
            Comparator.comparing(FixedLoad::kind)
                .thenComparing(FixedLoad::name)
                .thenComparing(FixedLoad::weight)),
        season.boat());
  }

  private Comparator<StyleHours> byTripAndStyle() {
    return Comparator.<StyleHours, Integer>comparing(row -> trips.get(row.trip()))
        .thenComparing(row -> styles.get(row.style()))
        .thenComparing(row -> row.thrownHours().orElse(-1));
  }

  private Comparator<Loss> byTripAndItem() {
    return Comparator.<Loss, Integer>comparing(loss -> trips.get(loss.trip()))
        .thenComparing(items(Loss::item))
        .thenComparing(Loss::cause)
        .thenComparing(Loss::lostPieces)
        .thenComparing(Loss::ranOut);
  }

  private Event ordered(Event event) {
    Comparator<Event.PlanLine> byStyle = Comparator.comparing(line -> styles.get(line.style()));
    return event.withPlan(
        sorted(
            event.plan(),
            byStyle
                .thenComparing(line -> String.join(",", line.colours()))
                .thenComparing(Event.PlanLine::plannedHours)));
  }

  private <T> Comparator<T> items(Function<T, ItemId> item) {
    return Comparator.<T, Integer>comparing(row -> styles.get(item.apply(row).style()))
        .thenComparing(item);
  }

  private static Comparator<Compartment> bowToStern() {
    return Comparator.comparing(Compartment::ashore)
        .thenComparing(Comparator.comparing(Compartment::fromTransom).reversed())
        .thenComparing(Compartment::fromCentreline)
        .thenComparing(Compartment::name);
  }

  private static <T> List<T> sorted(List<T> rows, Comparator<? super T> order) {
    return rows.stream().sorted(order).toList();
  }
}
