package sparewell.ooxml;

import java.util.List;

/**
 * Rows to add below a table of the angler's.
 *
 * @param sheet the sheet; it has a part
 * @param headerRow number of the table's header, counted from 1
 * @param lastRow number of its last row that holds anything; the header's where none does
 * @param modelRow number of the row whose formats go on; 0 where none is fit for it
 * @param firstColumn leftmost column of the table, counted from 1
 * @param lastColumn its rightmost column
 * @param rows the cells of each new row, by column
 */
public record NewRows(
    SheetEntry sheet,
    int headerRow,
    int lastRow,
    int modelRow,
    int firstColumn,
    int lastColumn,
    List<List<NewCell>> rows) {
  public NewRows {
    rows = rows.stream().map(List::copyOf).toList();
  }

  public int firstNew() {
    return lastRow + 1;
  }

  public int lastNew() {
    return lastRow + rows.size();
  }
}
