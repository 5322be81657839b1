package sparewell.save.append;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A rectangle of cells, counted from 1, ends included. */
record Area(int firstRow, int firstColumn, int lastRow, int lastColumn) {
  private static final Pattern REFERENCE =
      Pattern.compile("\\$?([A-Z]{1,3})\\$?(\\d{1,7})(?::\\$?([A-Z]{1,3})\\$?(\\d{1,7}))?");

  /** A reference such as {@code A1:C9} or {@code B2}; absent for one of whole rows or columns. */
  static Optional<Area> of(String reference) {
    Matcher m = REFERENCE.matcher(reference.strip());
    if (!m.matches()) {
      return Optional.empty();
    }
    int column = column(m.group(1));
    int row = Integer.parseInt(m.group(2));
    return Optional.of(
        m.group(3) == null
            ? new Area(row, column, row, column)
            : new Area(row, column, Integer.parseInt(m.group(4)), column(m.group(3))));
  }

  static int column(String letters) {
    int column = 0;
    for (char c : letters.toCharArray()) {
      column = column * 26 + c - 'A' + 1;
    }
    return column;
  }

  static String letters(int column) {
    StringBuilder letters = new StringBuilder();
    for (int rest = column; rest > 0; rest = (rest - 1) / 26) {
      letters.insert(0, (char) ('A' + (rest - 1) % 26));
    }
    return letters.toString();
  }

  boolean meets(Area other) {
    return firstRow <= other.lastRow
        && other.firstRow <= lastRow
        && firstColumn <= other.lastColumn
        && other.firstColumn <= lastColumn;
  }

  Area downTo(int row) {
    return new Area(firstRow, firstColumn, row, lastColumn);
  }

  /** As a reference such as {@code A1:C9}; a single cell as {@code B2}. */
  String reference() {
    String first = letters(firstColumn) + firstRow;
    String last = letters(lastColumn) + lastRow;
    return first.equals(last) ? first : first + ":" + last;
  }
}
