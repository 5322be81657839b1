package sparewell.save.append;

import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import sparewell.ooxml.PartNames;
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

  /** The parts that change, by their keys. */
  public Map<String, byte[]> parts() throws WorkbookRefused, IOException {
    Map<String, byte[]> edited = new TreeMap<>();
    for (NewRows added : sheets) {
      String part = added.sheet().partName().orElseThrow();
      edited.put(
          PartNames.key(part),
          new RowAppend(original.file(), added, original.sheetText(part), showsDates).apply());
      TableGrowth.of(original, added)
          .forEach((table, content) -> edited.put(PartNames.key(table), content));
    }
    Recalculation.asked(original, sheets)
        .ifPresent(content -> edited.put(PartNames.key(original.workbookPart()), content));
    return edited;
  }

  /** Judges a written workbook. */
  @FunctionalInterface
  public interface Proof {
    /** Whether it holds what it should. */
    boolean holds(WorkbookPackage written) throws WorkbookRefused;
  }
}
