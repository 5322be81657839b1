package sparewell.workbook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What the command line sets in place of the workbook's settings, each within its setting's range.
 *
 * @param asOf date of the analysis
 * @param budget money for the buy list
 * @param chance wanted chance, which beats those of styles and events too
 */
public record Overrides(
    Optional<LocalDate> asOf, Optional<BigDecimal> budget, Optional<TypedChance> chance) {
  /** The workbook's settings stand. */
  public static final Overrides NONE =
      new Overrides(Optional.empty(), Optional.empty(), Optional.empty());
}
