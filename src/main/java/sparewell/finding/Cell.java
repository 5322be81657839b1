package sparewell.finding;

import java.util.Map;

/**
 * A cell, row or sheet of the workbook, counted as spreadsheet programs show it.
 *
 * @param sheet the sheet's name; empty where a finding belongs to no sheet
 * @param row row number counted from 1; 0 for the whole sheet
 * @param column column number counted from 1; 0 for the whole row or sheet
 * @param heading name of a declared column whose number is still to be found; empty where known
 */
public record Cell(String sheet, int row, int column, String heading) {
  /** Place of a finding that belongs to no sheet. */
  public static final Cell NOWHERE = new Cell("", 0, 0);

  public Cell(String sheet, int row, int column) {
    this(sheet, row, column, "");
  }

  public static Cell ofSheet(String sheet) {
    return new Cell(sheet, 0, 0);
  }

  /** The cell of this row in another column. */
  public Cell atColumn(int otherColumn) {
    return new Cell(sheet, row, otherColumn);
  }

  /** The cell of this row in a declared column whose number is not known yet. */
  public Cell under(String declared) {
    return new Cell(sheet, row, 0, declared);
  }

  /** Resolves a declared column to its number by sheet; the row where the sheet lacks it. */
  public Cell located(Map<String, Map<String, Integer>> columns) {
    return heading.isEmpty()
        ? this
        : atColumn(columns.getOrDefault(sheet, Map.of()).getOrDefault(heading, 0));
  }

  /** Reference like {@code E5}; a row gives its first cell, a whole sheet an empty text. */
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
