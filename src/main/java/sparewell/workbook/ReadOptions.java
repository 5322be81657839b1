package sparewell.workbook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Options for reading a workbook; settings given on the command line, each within its range,
 * override those of the workbook.
 *
 * @param today date of analysis of a workbook that sets none
 * @param chance wanted chance, which overrides those of styles and events too
 */
public record ReadOptions(
    LocalDate today,
    Optional<LocalDate> asOf,
    Optional<BigDecimal> budget,
    Optional<TypedChance> chance) {
  /** Options of a day without any setting of the command line. */
  public static ReadOptions on(LocalDate today) {
    return new ReadOptions(today, Optional.empty(), Optional.empty(), Optional.empty());
  }
}
