package sparewell.rates.record;

import java.util.List;
import java.util.Map;
import sparewell.finding.Findings;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.rates.history.StyleUse;
import sparewell.rates.history.TripLog;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.Trip;

/**
 * Foresees one trip after the other from the trips before it. What later trips tell (hours, shares
 * of hours, covers, losses) is never looked at; only the names of styles and families are those of
 * the whole season. After each trip the weights over (rate, draw) learn what happened; when twice
 * as many trips are known, the whole log is fitted anew. Each trip is foreseen as if it were the
 * next one of that fit: how far rates may walk in between is left out.
 */
final class Replay {
  /** Trips known before the first one foreseen. */
  static final int KNOWN_FIRST = 4;

  // Fitted anew when the trips known have grown so much; in between the weights learn.
  private static final int GROWTH = 2;

  /** Sets of hyperparameters weighed in a fit: few will do for thousands of forecasts. */
  private static final int DRAWS = 24;

  private Season season;
  private TripLog log;
  private List<Trip> trips;
  private Map<String, Style> styles;
  private int next = KNOWN_FIRST;
  private int nextFit = KNOWN_FIRST;
  private int fits;

  // As of the last fit; the raw rates learn on.
  private SeasonHistory known;
  private RateFit fit;
  private RawRates rates;

  Replay(Season season) {
    goOnIn(season);
  }

  /** Goes on in a season that has the trips so far, and may have later ones. */
  void goOnIn(Season season) {
    this.season = season;
    log = new TripLog(season);
    trips = SeasonHistory.trips(season);
    styles = season.stylesByName();
  }

  int trips() {
    return trips.size();
  }

  int fits() {
    return fits;
  }

  boolean hasNext() {
    return next < trips.size();
  }

  Trip coming() {
    return trips.get(next);
  }

  /** Foresees the next trip, style by style, then learns what happened on it. */
  List<Foreseen> next() {
    if (next == nextFit) {
      fitAnew();
      nextFit = next * GROWTH;
    }
    List<Foreseen> foreseen = asKnown(trips.get(next)).stream().map(this::foresee).toList();
    foreseen.forEach(one -> rates.learn(one.use()));
    fit = fit.learning(foreseen.stream().map(one -> observation(one.use())).toList());
    next++;
    return foreseen;
  }

  private void fitAnew() {
    known = SeasonHistory.of(season, log, trips.subList(0, next));
    FitInput input = known.input(trips.get(next).date(), season.settings().halfLifeMonths());
    fit = fit == null ? RateFit.first(input, DRAWS) : fit.after(input, DRAWS);
    rates = new RawRates(styles.size());
    known.uses().stream().filter(use -> !use.assumed()).forEach(rates::learn);
    fits++;
  }

  /**
   * The uses of a trip with the hours that a forecaster of that time would have counted. A loss of
   * a style without hours was nobody's plan, so nobody's forecast.
   */
  private List<StyleUse> asKnown(Trip trip) {
    double tripHours = trip.fishedHours().getAsDouble();
    return log.uses(next, trip, known.usual(), new Findings()).stream()
        .filter(use -> !use.assumed())
        .map(use -> known.usual().perHourAfloat() ? use.over(tripHours) : use)
        .toList();
  }

  private Foreseen foresee(StyleUse use) {
    Trip trip = trips.get(use.trip());
    RateFit.Term term = new RateFit.Term(use.hours(), trip.days(), cover(trip));
    return new Foreseen(
        use,
        chance(styles.get(known.styles().get(use.style()))),
        fit.losses(use.style(), List.of(term)),
        rates.losses(use));
  }

  private Observation observation(StyleUse use) {
    Trip trip = trips.get(use.trip());
    return new Observation(
        use.style(),
        use.trip(),
        use.hours(),
        trip.days(),
        cover(trip),
        use.lostPieces(),
        use.ranOut(),
        1);
  }

  private double chance(Style style) {
    double set = season.settings().chanceWantedProbability();
    return season.settings().chanceFromCommandLine()
        ? set
        : style.chanceWantedProbability().orElse(set);
  }

  private int cover(Trip trip) {
    if (trip.cover().isEmpty()) {
      return Observation.MIX;
    }
    int number = known.covers().indexOf(trip.cover().get());
    return number >= 0 && number < fit.input().covers() ? number : Observation.NEVER_LOGGED;
  }
}
