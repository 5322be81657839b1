package sparewell.workbook.read;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What the command line says about a reading; it beats the workbook's settings.
 *
 * @param asOf date of the analysis, where asked for
 * @param today the date of today, for a workbook that sets no date
 * @param budget money for the buy list, where asked for
 * @param chance wanted chance in (0, 1), or 50 to 99.9 as percent, where asked for
 */
public record ReadOptions(
    Optional<LocalDate> asOf,
    LocalDate today,
    Optional<BigDecimal> budget,
    Optional<Double> chance) {
  /** Nothing asked for. */
  public static ReadOptions on(LocalDate today) {
    return new ReadOptions(Optional.empty(), today, Optional.empty(), Optional.empty());
  }
}
