package sparewell.rates.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.rates.record.AfterEvent.StyleResult;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.season.Style;
import sparewell.season.Trip;

/**
 * The angler's own history replayed: from the fifth trip on, each trip is foreseen from what was
 * known before it, and compared with what happened. A prediction is one style on one trip, for the
 * hours it was thrown there.
 *
 * @param lines one for each policy
 * @param trips trips foreseen
 * @param fits how often the rates were fitted anew: the more seldom the more trips are known
 * @param sentence which policy did better, or that there is too little history to tell
 * @param lastEvent the last event fished; absent where none was, or too little was known before it
 */
public record TrackRecord(
    List<Line> lines, int trips, int fits, String sentence, Optional<AfterEvent> lastEvent) {
  /** The policy of the recommendation, never under the floor. */
  public static final String WITH_FLOOR = "recommendation with floor";

  private static final int FLAT = 3;

  public TrackRecord {
    lines = List.copyOf(lines);
  }

  /**
   * Outcome of a policy.
   *
   * @param policy which: recommendation, flat three, raw average or recommendation with floor
   * @param predictions styles on trips foreseen
   * @param runOuts how often more was lost than the policy would have carried
   * @param runOutPercent the same in percent; absent without predictions
   * @param meanCarried pieces of a style carried on a trip, on average; absent without predictions
   * @param coverageWantedProbability wanted chance that losses fall in the policy's interval;
   *     absent where it has none
   * @param coverageGotProbability share of losses that fell in it, a count on its edge counting in
   *     part
   */
  public record Line(
      String policy,
      int predictions,
      int runOuts,
      OptionalDouble runOutPercent,
      OptionalDouble meanCarried,
      OptionalDouble coverageWantedProbability,
      OptionalDouble coverageGotProbability) {}

  /** Replays a season. */
  public static TrackRecord of(Season season) {
    Replay replay = new Replay(season);
    PolicyTally recommendation = new PolicyTally();
    PolicyTally flat = new PolicyTally();
    PolicyTally raw = new PolicyTally();
    PolicyTally floored = new PolicyTally();
    double wantedRunOuts = 0;
    Optional<Event> last = AfterEvent.last(season);
    Optional<AfterEvent> lastEvent = Optional.empty();
    while (replay.hasNext()) {
      Trip trip = replay.coming();
      List<Foreseen> all = replay.next();
      if (last.isPresent() && !all.isEmpty() && AfterEvent.isOf(trip, last.get())) {
        lastEvent = Optional.of(after(season, last.get(), trip, all));
      }
      for (Foreseen foreseen : all) {
        double chance = foreseen.chanceProbability();
        recommendation.add(foreseen.losses(), chance, foreseen.use());
        raw.add(foreseen.byRawRate(), chance, foreseen.use());
        flat.add(FLAT, foreseen.use());
        int floor = floor(season.styles().get(foreseen.use().style()), season.settings());
        floored.add(Math.max(floor, foreseen.losses().quantile(chance)), foreseen.use());
        wantedRunOuts += 1 - chance;
      }
    }
    List<Line> rules =
        List.of(
            recommendation.line("recommendation"),
            flat.line("flat three"),
            raw.line("raw average"));
    List<Line> lines = new ArrayList<>(rules);
    lines.add(floored.line(WITH_FLOOR));
    return new TrackRecord(
        lines,
        Math.max(0, replay.trips() - Replay.KNOWN_FIRST),
        replay.fits(),
        Verdict.of(replay.trips(), rules, wantedRunOuts),
        lastEvent);
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
