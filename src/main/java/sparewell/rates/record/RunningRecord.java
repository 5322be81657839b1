package sparewell.rates.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import sparewell.rates.history.SeasonHistory;
import sparewell.rates.record.AfterEvent.StyleResult;
import sparewell.season.Event;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.season.Trip;

/** A track record that goes on where trips are added at the end of a log. One thread at a time. */
public final class RunningRecord {
  private static final int FLAT = 3;

  private final Replay replay;
  private final PolicyTally recommendation = new PolicyTally();
  private final PolicyTally flat = new PolicyTally();
  private final PolicyTally raw = new PolicyTally();
  private final PolicyTally floored = new PolicyTally();
  private double wantedRunOuts;
  private Season season;
  private Optional<Event> last = Optional.empty();
  private Optional<AfterEvent> lastEvent = Optional.empty();

  /** Begins the record of a season. */
  public RunningRecord(Season season) {
    this.season = season;
    this.replay = new Replay(season);
  }

  /** Returns whether a season is the one replayed so far with later trips, if any, added. */
  public boolean goesOnTo(Season grown) {
    List<Trip> before = SeasonHistory.trips(season);
    List<Trip> trips = SeasonHistory.trips(grown);
    Set<String> ids = before.stream().map(Trip::id).collect(Collectors.toSet());
    Optional<Event> now = AfterEvent.last(grown);
    return grown.settings().equals(season.settings())
        && grown.styles().equals(season.styles())
        && trips.size() >= before.size()
        && trips.subList(0, before.size()).equals(before)
        && same(ids, grown.styleHours(), season.styleHours(), StyleHours::trip)
        && same(ids, grown.losses(), season.losses(), Loss::trip)
        && (now.equals(last)
            || before.stream().noneMatch(trip -> AfterEvent.isOf(trip, now.get())));
  }

  private static <T> boolean same(
      Set<String> trips, List<T> now, List<T> before, Function<T, String> trip) {
    return of(trips, now, trip).equals(of(trips, before, trip));
  }

  private static <T> List<T> of(Set<String> trips, List<T> rows, Function<T, String> trip) {
    return rows.stream().filter(row -> trips.contains(trip.apply(row))).toList();
  }

  /** The track record of a season that this one {@linkplain #goesOnTo goes on to}. */
  public TrackRecord upTo(Season grown) {
    season = grown;
    replay.goOnIn(grown);
    Optional<Event> now = AfterEvent.last(grown);
    lastEvent = now.equals(last) ? lastEvent : Optional.empty();
    last = now;
    while (replay.hasNext()) {
      Trip trip = replay.coming();
      List<Foreseen> all = replay.next();
      if (last.isPresent() && !all.isEmpty() && AfterEvent.isOf(trip, last.get())) {
        lastEvent = Optional.of(after(season, last.get(), trip, all));
      }
      all.forEach(this::add);
    }
    List<TrackRecord.Line> rules =
        List.of(
            recommendation.line("recommendation"),
            flat.line("flat three"),
            raw.line("raw average"));
    List<TrackRecord.Line> lines = new ArrayList<>(rules);
    lines.add(floored.line(TrackRecord.WITH_FLOOR));
    return new TrackRecord(
        lines,
        Math.max(0, replay.trips() - Replay.KNOWN_FIRST),
        replay.fits(),
        Verdict.of(replay.trips(), rules, wantedRunOuts),
        lastEvent);
  }

  private void add(Foreseen foreseen) {
    double chance = foreseen.chanceProbability();
    recommendation.add(foreseen.losses(), chance, foreseen.use());
    raw.add(foreseen.byRawRate(), chance, foreseen.use());
    flat.add(FLAT, foreseen.use());
    int floor = floor(season.styles().get(foreseen.use().style()), season.settings());
    floored.add(Math.max(floor, foreseen.losses().quantile(chance)), foreseen.use());
    wantedRunOuts += 1 - chance;
  }

  /** The least to carry of a style taken as one item, as it is set now. */
  private static int floor(Style style, Settings settings) {
    return Math.max(style.carryAtLeast().orElse(settings.carryAtLeast()), style.neededTogether());
  }

  private static AfterEvent after(Season season, Event event, Trip trip, List<Foreseen> all) {
    return new AfterEvent(
        event,
        trip,
        all.stream()
            .map(one -> StyleResult.of(season.styles().get(one.use().style()).name(), one))
            .sorted(Comparator.comparingDouble(StyleResult::unusualProbability))
            .toList());
  }
}
