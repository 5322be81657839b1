package sparewell.rates.record;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.numerics.CountDistribution;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.Trip;

/**
 * The last event fished, as it was foreseen from the trips before it and as it went.
 *
 * @param event which
 * @param trip its trip in the log: of its date, or of its name
 * @param styles one for each style thrown; the most unusual first
 */
public record AfterEvent(Event event, Trip trip, List<StyleResult> styles) {
  public AfterEvent {
    styles = List.copyOf(styles);
  }

  /**
   * A style at the event.
   *
   * @param style its name
   * @param hours hours it was thrown
   * @param expectedPieces pieces foreseen to be lost in these hours
   * @param lostPieces pieces lost
   * @param unusualProbability chance of so many or more, or of so few or fewer, whichever is
   *     smaller, twice; at most 1
   */
  public record StyleResult(
      String style,
      double hours,
      double expectedPieces,
      int lostPieces,
      double unusualProbability) {
    static StyleResult of(String style, Foreseen foreseen) {
      int lost = foreseen.use().lostPieces();
      return new StyleResult(
          style,
          foreseen.use().hours(),
          foreseen.losses().mean(),
          lost,
          twoSided(foreseen.losses(), lost));
    }
  }

  /** Twice the smaller of P(N &le; lost) and P(N &ge; lost), at most 1. */
  static double twoSided(CountDistribution losses, int lost) {
    return Math.min(1, 2 * Math.min(losses.atMost(lost), 1 - losses.atMost(lost - 1)));
  }

  /** The latest event that is over and has a trip in the log. */
  static Optional<Event> last(Season season) {
    LocalDate asOf = season.settings().asOf();
    List<Event> ahead = season.eventsAhead();
    return season.events().stream()
        .filter(event -> !event.date().isAfter(asOf) && !ahead.contains(event))
        .filter(event -> season.trips().stream().anyMatch(trip -> isOf(trip, event)))
        .max(Comparator.comparing(Event::date).thenComparing(Event::name));
  }

  static boolean isOf(Trip trip, Event event) {
    return trip.date().equals(event.date()) || trip.id().equalsIgnoreCase(event.name());
  }
}
