package sparewell.finding;

/**
 * A place in the workbook as the angler sees it.
 *
 * @param sheet the sheet's name; empty where a finding belongs to no sheet
 * @param row row number counted from 1; 0 for the whole sheet
 * @param column column number counted from 1; 0 for the whole row or sheet
 */
public record Cell(String sheet, int row, int column) {
  /** No place in particular. */
  public static final Cell NOWHERE = new Cell("", 0, 0);

  /** The whole of a sheet. */
  public static Cell ofSheet(String sheet) {
    return new Cell(sheet, 0, 0);
  }

  /** The cell of this row in another column. */
  public Cell atColumn(int otherColumn) {
    return new Cell(sheet, row, otherColumn);
  }

  /** Like {@code E5}; a whole row gives its first cell, a whole sheet an empty text. */
  public String reference() {
    if (row == 0) {
      return "";
    }
    StringBuilder letters = new StringBuilder();
    for (int rest = Math.max(column, 1); rest > 0; rest = (rest - 1) / 26) {
      letters.insert(0, (char) ('A' + (rest - 1) % 26));
    }
    return letters.append(row).toString();
  }
}
