package sparewell.stow;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.StyleHours;
import sparewell.season.Trip;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;

/**
 * Minutes a day spent reaching for boxes that do not stand at hand.
 *
 * <p>Model: a style's hours a day are those of the next event's plan, where it has one, else those
 * of the last 12 months' trips with style hours, each divided by their days. They fall on the boxes
 * aboard by the pieces of the style in them. Each hour thrown out of a box that is not at hand
 * costs {@link #MINUTES_AN_HOUR}.
 */
final class Reach {
  /**
   * An assumption, no source: while a style is thrown its box is opened three times an hour, and
   * half a minute goes each time if it does not stand at hand.
   */
  static final double MINUTES_AN_HOUR = 3 * 0.5;

  private Reach() {}

  /** By box what it costs a day if it does not stand at hand; absent where no hours are known. */
  static Optional<Map<String, Double>> minutesByBox(Season season, OnHand onHand) {
    Map<String, Double> hours = hoursADay(season);
    if (hours.isEmpty() || season.compartments().stream().noneMatch(place -> place.atHand())) {
      return Optional.empty();
    }
    Map<String, Integer> pieces = new HashMap<>();
    List<Holding> boxed =
        onHand.holdings().stream()
            .filter(holding -> !holding.ashore() && !holding.place().loose())
            .sorted(Comparator.comparing(holding -> holding.place().box()))
            .toList();
    boxed.forEach(one -> pieces.merge(one.item().style(), one.pieces(), Integer::sum));
    Map<String, Double> minutes = new HashMap<>();
    for (Holding one : boxed) {
      String style = one.item().style();
      double share = one.pieces() / (double) Math.max(1, pieces.get(style));
      double its = hours.getOrDefault(style, 0.0) * share * MINUTES_AN_HOUR;
      minutes.merge(one.place().box(), its, Double::sum);
    }
    return Optional.of(minutes);
  }

  /** Hours a day by style. */
  private static Map<String, Double> hoursADay(Season season) {
    LocalDate asOf = season.settings().asOf();
    Map<String, Double> hours = new HashMap<>();
    Optional<Event> next = season.eventsAhead().stream().findFirst();
    if (next.isPresent() && !next.get().plan().isEmpty()) {
      for (Event.PlanLine line : next.get().plan()) {
        hours.merge(line.style(), line.plannedHours() / next.get().days(), Double::sum);
      }
      return hours;
    }
    Map<String, Trip> trips = season.tripsById();
    Set<String> counted = new HashSet<>();
    double days = 0;
    for (StyleHours thrown : season.styleHours()) {
      Trip trip = trips.get(thrown.trip());
      if (trip.date().isAfter(asOf.minusMonths(12))) {
        days += counted.add(trip.id()) ? trip.days() : 0;
        hours.merge(thrown.style(), thrown.knownHours(), Double::sum);
      }
    }
    double fished = days;
    hours.replaceAll((style, sum) -> sum / fished);
    return hours;
  }
}
