package sparewell.save.append;

import java.time.LocalDateTime;
import java.util.List;
import java.util.function.IntPredicate;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/**
 * Rows to add to a workbook.
 *
 * @param original the workbook as it was read; stays open, and is what is replaced
 * @param sheets the rows, at most one entry for a sheet
 * @param showsDates whether the cell format of an index shows dates
 * @param proof looks at the new workbook before it may replace the old one
 * @param now date and time for the backup's name
 * @param backupsKept how many backups stay, at least 1
 */
public record AppendRequest(
    WorkbookPackage original,
    List<NewRows> sheets,
    IntPredicate showsDates,
    Proof proof,
    LocalDateTime now,
    int backupsKept) {
  public AppendRequest {
    sheets = List.copyOf(sheets);
  }

  @FunctionalInterface
  public interface Proof {
    boolean holds(WorkbookPackage written) throws WorkbookRefused;
  }
}
