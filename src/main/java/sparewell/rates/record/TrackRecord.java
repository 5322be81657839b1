package sparewell.rates.record;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.season.Season;

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
    return new RunningRecord(season).upTo(season);
  }
}
