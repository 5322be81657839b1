package sparewell.rates;

import java.util.List;
import java.util.Optional;
import sparewell.season.ItemId;

/**
 * A coming stretch of use of one style.
 *
 * @param hours hours the style will be thrown, &ge; 0; hours afloat where rates are per hour afloat
 * @param days days they are spread over, &gt; 0
 * @param cover category of cover; absent means the mix logged so far
 * @param among the items of the style that will be used and share its losses
 * @param stepsAhead how many trips from the last one logged, &ge; 1: the rate walks on with each
 */
public record Exposure(
    double hours, double days, Optional<String> cover, List<ItemId> among, int stepsAhead) {
  public Exposure {
    among = List.copyOf(among);
    if (!(hours >= 0) || !(days > 0) || stepsAhead < 1) {
      throw new IllegalArgumentException(
          "hours " + hours + ", days " + days + ", steps ahead " + stepsAhead);
    }
  }

  /** True if something may be lost. */
  boolean used() {
    return hours > 0 && !among.isEmpty();
  }

  /** On the next trip. */
  public Exposure(double hours, double days, Optional<String> cover, List<ItemId> among) {
    this(hours, days, cover, among, 1);
  }

  /** The same so many trips ahead. */
  public Exposure ahead(int steps) {
    return new Exposure(hours, days, cover, among, steps);
  }
}
