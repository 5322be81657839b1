package sparewell.rates.history;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sparewell.season.Style;
import sparewell.season.Trip;

/**
 * Mean share of the hours afloat that each style is thrown, over the trips with style hours.
 *
 * @param mean mean share by style, &ge; 0; 1 for all where rates are per hour afloat, but 0 for
 *     gear where no trip is logged
 * @param guessed styles that were lost, so thrown, though no style hours have them: theirs is the
 *     mean of the others' shares
 * @param perHourAfloat whether no trip has style hours, so that hours are hours afloat
 */
public record UsualShares(Map<String, Double> mean, Set<String> guessed, boolean perHourAfloat) {
  public UsualShares {
    guessed = Set.copyOf(guessed);
  }

  /**
   * Over the given trips.
   *
   * @param trips with hours
   */
  static UsualShares of(List<Style> styles, List<Trip> trips, TripLog log) {
    Map<String, Double> sum = new LinkedHashMap<>();
    Map<String, Integer> unread = new HashMap<>();
    int count = 0;
    for (Trip trip : trips) {
      if (log.hasStyleHours(trip)) {
        count++;
        Set<String> open = log.unread(trip).keySet();
        open.forEach(style -> unread.merge(style, 1, Integer::sum));
        log.styleHours(trip)
            .forEach(
                (style, hours) ->
                    sum.merge(
                        style,
                        open.contains(style) ? 0 : hours / trip.fishedHours().getAsDouble(),
                        Double::sum));
      }
    }
    Map<String, Double> mean = new LinkedHashMap<>();
    for (Style style : styles) {
      int read = Math.max(1, count - unread.getOrDefault(style.name(), 0));
      mean.put(
          style.name(),
          count > 0
              ? sum.getOrDefault(style.name(), 0.0) / read
              : trips.isEmpty() && style.gear() ? 0 : 1);
    }
    double any = new UsualShares(mean, Set.of(), count == 0).ofAny();
    Set<String> guessed = new HashSet<>();
    for (Trip trip : trips) {
      log.lost(trip).stream()
          .filter(style -> mean.getOrDefault(style, 1.0) == 0)
          .forEach(guessed::add);
    }
    guessed.forEach(style -> mean.put(style, any));
    return new UsualShares(mean, guessed, count == 0);
  }

  /**
   * Mean share of a style.
   *
   * @throws IllegalArgumentException where the season has no such style
   */
  public double of(String style) {
    Double share = mean.get(style);
    if (share == null) {
      throw new IllegalArgumentException("unknown style: " + style);
    }
    return share;
  }

  /** Mean share of the styles that have one; 1 where none has. */
  double ofAny() {
    return mean.values().stream()
        .mapToDouble(Double::doubleValue)
        .filter(share -> share > 0)
        .average()
        .orElse(1);
  }
}
