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
 */
public record Exposure(double hours, double days, Optional<String> cover, List<ItemId> among) {
  public Exposure {
    among = List.copyOf(among);
    if (!(hours >= 0) || !(days > 0)) {
      throw new IllegalArgumentException("hours " + hours + ", days " + days);
    }
  }
}
