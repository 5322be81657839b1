package sparewell.workbook.read;

import java.time.LocalDate;
import sparewell.workbook.Overrides;

/**
 * What a reading is told beside the workbook.
 *
 * @param today the date of today, for a workbook that sets no date
 * @param overrides what the command line sets in place of the workbook's settings
 */
public record ReadOptions(LocalDate today, Overrides overrides) {
  /** Nothing asked for. */
  public static ReadOptions on(LocalDate today) {
    return new ReadOptions(today, Overrides.NONE);
  }
}
