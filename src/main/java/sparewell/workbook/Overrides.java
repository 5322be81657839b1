package sparewell.workbook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Settings given on the command line, each within its range, which override those of the workbook.
 *
 * @param chance wanted chance, which overrides those of styles and events too
 */
public record Overrides(
    Optional<LocalDate> asOf, Optional<BigDecimal> budget, Optional<TypedChance> chance) {
  public static final Overrides NONE =
      new Overrides(Optional.empty(), Optional.empty(), Optional.empty());
}
