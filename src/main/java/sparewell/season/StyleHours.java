package sparewell.season;

import java.util.OptionalDouble;
import sparewell.finding.Cell;

/**
 * Hours that a style was thrown on a trip.
 *
 * @param thrownHours hours, &ge; 0; absent where it was thrown for hours that could not be read
 * @param origin row, or the cell that could not be read
 */
public record StyleHours(String trip, String style, OptionalDouble thrownHours, Cell origin) {
  public StyleHours(String trip, String style, double thrownHours, Cell origin) {
    this(trip, style, OptionalDouble.of(thrownHours), origin);
  }

  public double knownHours() {
    return thrownHours.orElse(0);
  }
}
