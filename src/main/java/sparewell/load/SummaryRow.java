package sparewell.load;

import java.util.Optional;

/**
 * One quantity of the load summary.
 *
 * @param value a {@link sparewell.units.Length}, a {@link sparewell.units.Mass}, or a number in kg
 *     or degrees; absent where not known
 */
public record SummaryRow(String quantity, Kind kind, Optional<?> value) {
  public enum Kind {
    MASS,
    MASS_DIFFERENCE,
    LENGTH,
    DEGREES
  }
}
