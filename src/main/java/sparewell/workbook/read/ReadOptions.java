package sparewell.workbook.read;

import java.time.LocalDate;
import sparewell.workbook.Overrides;

/**
 * Options for reading a workbook.
 *
 * @param today date of analysis of a workbook that sets none
 */
public record ReadOptions(LocalDate today, Overrides overrides) {
  public static ReadOptions on(LocalDate today) {
    return new ReadOptions(today, Overrides.NONE);
  }
}
