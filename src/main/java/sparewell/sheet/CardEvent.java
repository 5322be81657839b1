package sparewell.sheet;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import sparewell.event.EventPacking.PackingList;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.Trip;

/**
 * Event that the trip card is for. The card waits for an event behind until its trip is logged: the
 * angler comes home with the printed page, and any run before he posts would take it from him.
 */
final class CardEvent {
  /** Days after an event for which an empty card waits; then it was not fished, or not logged. */
  static final int DAYS_TO_WAIT = 14;

  /** Days around an event's first day in which a trip of its name is that of the event. */
  private static final int DAYS_BEFORE = 3;

  private static final int DAYS_AFTER = 30;

  private CardEvent() {}

  /** The event; empty where the card is for any trip. */
  static Optional<Event> of(Results results) {
    Typed typed = results.typed();
    Season season = results.season();
    Optional<Event> there = TripCardSheet.event(typed, season);
    if (TripCardSheet.filled(typed) || ownName(typed.card(), season)) {
      return there;
    }
    return there
        .filter(event -> waits(event, season))
        .or(() -> earliest(season))
        .or(
            () ->
                results.packing().lists().stream()
                    .map(PackingList::event)
                    .filter(event -> !logged(event, season))
                    .findFirst());
  }

  private static Optional<Event> earliest(Season season) {
    return season.events().stream()
        .filter(event -> waits(event, season))
        .min(Comparator.comparing(Event::date).thenComparing(Event::name));
  }

  private static boolean waits(Event event, Season season) {
    LocalDate asOf = season.settings().asOf();
    return event.date().isBefore(asOf)
        && !event.lastDay().isBefore(asOf.minusDays(DAYS_TO_WAIT))
        && !logged(event, season);
  }

  /** Returns whether Trips has a trip of its days, or one of its name near them. */
  static boolean logged(Event event, Season season) {
    return season.trips().stream()
        .anyMatch(
            trip ->
                covers(event, trip) && !ofAnother(event, trip, season)
                    || named(event, trip)
                        && season.events().stream().noneMatch(other -> covers(other, trip)));
  }

  /** True for a trip named like another event of the same day. */
  private static boolean ofAnother(Event event, Trip trip, Season season) {
    return season.events().stream()
        .filter(other -> !other.equals(event) && other.date().equals(event.date()))
        .anyMatch(other -> named(other, trip));
  }

  private static boolean covers(Event event, Trip trip) {
    return !trip.date().isBefore(event.date()) && !trip.date().isAfter(event.lastDay());
  }

  private static boolean named(Event event, Trip trip) {
    String id = Ticks.fold(trip.id());
    String name = Ticks.fold(event.name());
    return (id.equals(name) || id.equals(name + " " + trip.date()))
        && !trip.date().isBefore(event.date().minusDays(DAYS_BEFORE))
        && !trip.date().isAfter(event.date().plusDays(DAYS_AFTER));
  }

  /** The event that the trip is called like, else the one that the card is for. */
  static Optional<Event> named(Map<String, Object> card, Season season) {
    return named(card, TripCardSheet.TRIP, season)
        .or(() -> named(card, TripCardSheet.EVENT, season));
  }

  static boolean ownName(Map<String, Object> card, Season season) {
    String name = text(card, TripCardSheet.TRIP);
    return !name.isEmpty()
        && !name.equals(text(card, TripCardSheet.EVENT))
        && named(card, TripCardSheet.TRIP, season).isEmpty();
  }

  /** The event of the name in a field and, where several have it, of the card's date. */
  private static Optional<Event> named(Map<String, Object> card, String field, Season season) {
    String name = text(card, field);
    String date = String.valueOf(card.get(TripCardSheet.DATE));
    return season.events().stream()
        .filter(event -> Ticks.fold(event.name()).equals(name))
        .min(Comparator.comparing(event -> !event.date().toString().equals(date)));
  }

  private static String text(Map<String, Object> card, String field) {
    return Optional.ofNullable(card.get(field)).map(Ticks::plain).map(Ticks::fold).orElse("");
  }
}
