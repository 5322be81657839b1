package sparewell.rates;

import java.util.List;
import java.util.Map;
import sparewell.finding.Findings;
import sparewell.numerics.CountDistribution;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.Trip;

/**
 * Foresees each trip from the trips before it. What later trips tell (shares of hours, covers,
 * losses) is never looked at; only the names of styles and families are those of the whole season.
 */
final class Replay {
  /** Trips known before the first one foreseen. */
  static final int KNOWN_FIRST = 4;

  // Fitted anew when the trips known have grown so much.
  private static final double GROWTH = 1.5;
  private static final double GROWTH_OF_MUCH = 2;
  private static final int MUCH = 40;
  private static final int DRAWS = 32;
  private static final int FLAT = 3;

  private final Season season;
  private final TripLog log;
  private final List<Trip> trips;
  private final Map<String, Style> styles;
  private final PolicyTally recommendation = new PolicyTally();
  private final PolicyTally flat = new PolicyTally();
  private final PolicyTally raw = new PolicyTally();
  private double wantedRunOuts;
  private int fits;

  // As of the last fit; the raw rates learn on.
  private SeasonHistory known;
  private HyperPosterior fit;
  private ReplayForecast forecast;
  private RawRates rates;

  Replay(Season season) {
    this.season = season;
    log = new TripLog(season);
    trips = SeasonHistory.trips(season);
    styles = season.stylesByName();
  }

  /** Replays all trips. To be called once. */
  TrackRecord record() {
    int nextFit = KNOWN_FIRST;
    for (int t = KNOWN_FIRST; t < trips.size(); t++) {
      if (t == nextFit) {
        fitAnew(t);
        nextFit = (int) (t * (t < MUCH ? GROWTH : GROWTH_OF_MUCH));
      }
      List<StyleUse> uses = asKnown(t);
      uses.forEach(this::foresee);
      uses.forEach(rates::learn);
    }
    List<TrackRecord.Line> lines =
        List.of(
            recommendation.line("recommendation"),
            flat.line("flat three"),
            raw.line("raw average"));
    return new TrackRecord(
        lines,
        Math.max(0, trips.size() - KNOWN_FIRST),
        fits,
        Verdict.of(trips.size(), lines, wantedRunOuts));
  }

  private void fitAnew(int t) {
    known = SeasonHistory.of(season, log, trips.subList(0, t));
    FitInput input = known.input(trips.get(t).date(), season.settings().halfLifeMonths());
    FitData data = new FitData(input, true);
    fit = fit == null ? HyperPosterior.of(data, Hyperprior.WEAK, DRAWS) : fit.after(data);
    forecast = new ReplayForecast(fit);
    rates = new RawRates(styles.size());
    known.uses().stream().filter(use -> !use.assumed()).forEach(rates::learn);
    fits++;
  }

  /**
   * The uses of a trip with the hours that a forecaster of that time would have counted. A loss of
   * a style without hours was nobody's plan, so nobody's forecast.
   */
  private List<StyleUse> asKnown(int t) {
    Trip trip = trips.get(t);
    return log.uses(t, trip, known.usual(), new Findings()).stream()
        .filter(use -> !use.assumed())
        .map(
            use -> known.usual().perHourAfloat() ? use.over(trip.fishedHours().getAsDouble()) : use)
        .toList();
  }

  private void foresee(StyleUse use) {
    Trip trip = trips.get(use.trip());
    double chance = chance(styles.get(known.styles().get(use.style())));
    CountDistribution losses =
        forecast.losses(use.style(), new RateFit.Term(use.hours(), trip.days(), cover(trip)));
    recommendation.add(losses, losses.quantile(chance), use);
    CountDistribution poisson = rates.losses(use);
    raw.add(poisson, poisson.quantile(chance), use);
    flat.add(FLAT, use);
    wantedRunOuts += 1 - chance;
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
    return number >= 0 && number < fit.data().mix().length ? number : Observation.NEVER_LOGGED;
  }
}
