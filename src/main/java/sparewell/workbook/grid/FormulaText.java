package sparewell.workbook.grid;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.util.CellReference;

/**
 * Copies formulas to other cells as a spreadsheet does: references without a $ are shifted.
 *
 * @see "ECMA-376 part 1, section 18.17 (grammar of formulas)"
 */
public final class FormulaText {
  private static final int MOST_ROWS = 1_048_576;
  private static final int MOST_COLUMNS = 16_384;

  private static final String TEXT = "\"[^\"]*+(?:\"\"[^\"]*+)*+\"";
  private static final String SHEET = "'[^']*+(?:''[^']*+)*+'";

  /** Columns of a table, or the number of another workbook; ' makes the next character plain. */
  private static final String BRACKETED = "\\[(?:'.|[^\\[\\]']|\\[(?:'.|[^\\[\\]'])*+\\])*+\\]";

  private static final String WORD = "[\\p{L}\\p{Nd}$_.\\\\?]+";
  private static final Pattern TOKEN =
      Pattern.compile(
          TEXT + "|" + SHEET + "|" + BRACKETED + "|(" + WORD + ")|[^\"'\\[#]", Pattern.DOTALL);
  private static final Pattern NAMED_SHEET = Pattern.compile("'|" + WORD + "!");
  private static final Pattern CELL =
      Pattern.compile("(\\$?)([A-Za-z]{1,3})(\\$?)([1-9][0-9]{0,6})");
  private static final Pattern COLUMN = Pattern.compile("\\$?[A-Za-z]{1,3}");
  private static final Pattern ROW = Pattern.compile("\\$?[0-9]{1,7}");

  private FormulaText() {}

  /**
   * Formula as copied so many rows down and columns to the right.
   *
   * @param text a formula as the file holds it, without its equals sign
   * @return empty where a reference would leave the sheet, or where the formula holds what is not
   *     moved with certainty: references to whole rows, error values, spilled ranges, sheets from
   *     one on that is named like a cell
   */
  public static Optional<String> moved(String text, int rows, int columns) {
    Matcher token = TOKEN.matcher(text);
    StringBuilder out = new StringBuilder();
    for (int at = 0; at < text.length(); at = token.end()) {
      if (!token.region(at, text.length()).lookingAt()) {
        return Optional.empty();
      }
      Optional<String> moved =
          token.group(1) == null
              ? Optional.of(token.group())
              : word(text, at, token.end(), rows, columns);
      if (moved.isEmpty()) {
        return moved;
      }
      out.append(moved.get());
    }
    return Optional.of(out.toString());
  }

  /** A reference, a name, a function or a number. */
  private static Optional<String> word(String text, int start, int end, int rows, int columns) {
    String word = text.substring(start, end);
    char before = start > 0 ? text.charAt(start - 1) : ' ';
    char behind = end < text.length() ? text.charAt(end) : ' ';
    if (behind == '!' || behind == '(' || behind == '[') {
      return Optional.of(word); // a sheet, a function, a table
    }
    Matcher cell = CELL.matcher(word);
    if (cell.matches()) {
      boolean mayBeSheet =
          behind == ':'
              && before != '!'
              && NAMED_SHEET.matcher(text).region(end + 1, text.length()).lookingAt();
      return mayBeSheet ? Optional.empty() : cell(cell, rows, columns);
    }
    boolean ranged = before == ':' || behind == ':';
    boolean held =
        ranged && ROW.matcher(word).matches()
            || ranged && columns != 0 && COLUMN.matcher(word).matches();
    return held ? Optional.empty() : Optional.of(word);
  }

  private static Optional<String> cell(Matcher cell, int rows, int columns) {
    int column = SheetStream.columnNumber(cell.group(2), 0);
    int row = Integer.parseInt(cell.group(4));
    if (column > MOST_COLUMNS || row > MOST_ROWS) {
      return Optional.of(cell.group()); // a name that looks like a reference
    }
    int toColumn = cell.group(1).isEmpty() ? column + columns : column;
    int toRow = cell.group(3).isEmpty() ? row + rows : row;
    if (toColumn < 1 || toColumn > MOST_COLUMNS || toRow < 1 || toRow > MOST_ROWS) {
      return Optional.empty();
    }
    String letters =
        toColumn == column ? cell.group(2) : CellReference.convertNumToColString(toColumn - 1);
    return Optional.of(cell.group(1) + letters + cell.group(3) + toRow);
  }
}
