package sparewell.rates.history;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sparewell.season.Trip;

/**
 * What share of the hours afloat each style is thrown on average, over the trips with style hours.
 *
 * @param mean mean share by style, &ge; 0; 1 for all where rates are per hour afloat
 * @param perHourAfloat whether no trip has style hours, so that hours are hours afloat
 */
public record UsualShares(Map<String, Double> mean, boolean perHourAfloat) {
  /**
   * Over the given trips.
   *
   * @param trips with hours
   */
  static UsualShares of(List<String> styles, List<Trip> trips, TripLog log) {
    Map<String, Double> sum = new LinkedHashMap<>();
    int count = 0;
    for (Trip trip : trips) {
      if (log.hasStyleHours(trip)) {
        count++;
        log.styleHours(trip)
            .forEach(
                (style, hours) ->
                    sum.merge(style, hours / trip.fishedHours().getAsDouble(), Double::sum));
      }
    }
    Map<String, Double> mean = new LinkedHashMap<>();
    for (String style : styles) {
      mean.put(style, count == 0 ? 1 : sum.getOrDefault(style, 0.0) / count);
    }
    return new UsualShares(mean, count == 0);
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
