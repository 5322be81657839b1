package sparewell.workbook.importing;

import java.nio.file.Path;
import java.util.List;
import sparewell.ooxml.SheetEntry;

/**
 * Plan of the rows that a file adds to its sheet.
 *
 * @param delimiter its delimiter
 * @param headings its header as written
 * @param headerRow number of the sheet's header, counted from 1
 * @param lastRow number of the last row that holds anything; the header's where none does
 * @param modelRow number of the row whose formats are copied; 0 where there is none
 * @param firstColumn leftmost column of the sheet's table, counted from 1
 * @param lastColumn its rightmost column
 * @param added rows to add, in the order of the file
 * @param copied formulas to copy down into them
 * @param known rows that the sheet holds already
 * @param rejected rows that cannot be used
 * @param notes further remarks, whole sentences
 */
public record SheetPlan(
    Path file,
    char delimiter,
    List<String> headings,
    SheetEntry sheet,
    int headerRow,
    int lastRow,
    int modelRow,
    int firstColumn,
    int lastColumn,
    List<NewRow> added,
    List<CopiedFormula> copied,
    int known,
    List<Rejected> rejected,
    List<String> notes) {
  public SheetPlan {
    headings = List.copyOf(headings);
    added = List.copyOf(added);
    copied = List.copyOf(copied);
    rejected = List.copyOf(rejected);
    notes = List.copyOf(notes);
  }
}
