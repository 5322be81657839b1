package sparewell.workbook.importing;

import java.nio.file.Path;
import java.util.List;
import sparewell.ooxml.NewRows;

/**
 * Plan of the rows that a file adds to its sheet.
 *
 * @param headings its header as written
 * @param rows where the rows go, and their cells, formulas copied down among them
 * @param known rows that the sheet holds already
 * @param notes further remarks, whole sentences
 */
public record SheetPlan(
    Path file,
    char delimiter,
    List<String> headings,
    NewRows rows,
    List<NewRow> added,
    int known,
    List<Rejected> rejected,
    List<String> notes) {

  public String sheetName() {
    return rows.sheet().name();
  }

  /**
   * A row of a file that cannot be used.
   *
   * @param line the line of the file it begins on, counted from 1
   * @param reason what is wrong with it, a sentence without its full stop
   */
  public record Rejected(long line, List<String> cells, String reason) {}
}
