package sparewell.workbook.grid;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Copies formulas to other cells as a spreadsheet does: references without a $ are shifted.
 *
 * @see "ECMA-376 part 1, section 18.17 (grammar of formulas)"
 */
public final class FormulaText {
  private static final int MOST_ROWS = 1_048_576;
  private static final int MOST_COLUMNS = 16_384;
  private static final Pattern CELL =
      Pattern.compile("(\\$?)([A-Za-z]{1,3})(\\$?)([1-9][0-9]{0,6})");
  private static final Pattern COLUMN = Pattern.compile("\\$?[A-Za-z]{1,3}");
  private static final Pattern ROW = Pattern.compile("\\$?[0-9]{1,7}");

  private final String text;
  private final int rows;
  private final int columns;
  private final StringBuilder out = new StringBuilder();
  private int at;

  private FormulaText(String text, int rows, int columns) {
    this.text = text;
    this.rows = rows;
    this.columns = columns;
  }

  /**
   * Formula as copied so many rows down and columns to the right.
   *
   * @param text a formula as the file holds it, without its equals sign
   * @return empty where a reference would leave the sheet, or where the formula holds what is not
   *     moved with certainty: references to whole rows, error values, spilled ranges, sheets from
   *     one on that is named like a cell
   */
  public static Optional<String> moved(String text, int rows, int columns) {
    FormulaText moving = new FormulaText(text, rows, columns);
    return moving.move() ? Optional.of(moving.out.toString()) : Optional.empty();
  }

  private boolean move() {
    while (at < text.length()) {
      char c = text.charAt(at);
      boolean whole = true;
      if (c == '"' || c == '\'') {
        whole = quoted(c);
      } else if (c == '[') {
        whole = bracketed();
      } else if (c == '#') {
        return false;
      } else if (inWord(c)) {
        whole = word();
      } else {
        out.append(c);
        at++;
      }
      if (!whole) {
        return false;
      }
    }
    return true;
  }

  /** A text, or the name of a sheet. */
  private boolean quoted(char mark) {
    int end = at + 1;
    while (end < text.length()) {
      if (text.charAt(end) == mark) {
        if (end + 1 >= text.length() || text.charAt(end + 1) != mark) {
          copyTo(end + 1);
          return true;
        }
        end++;
      }
      end++;
    }
    return false;
  }

  /** Columns of a table, or the number of another workbook: they stay as they are. */
  private boolean bracketed() {
    int depth = 0;
    for (int end = at; end < text.length(); end++) {
      char c = text.charAt(end);
      if (c == '\'') {
        end++; // makes the next character a plain one
      } else if (c == '[') {
        depth++;
      } else if (c == ']' && --depth == 0) {
        copyTo(end + 1);
        return true;
      }
    }
    return false;
  }

  private void copyTo(int end) {
    out.append(text, at, end);
    at = end;
  }

  private static boolean inWord(char c) {
    return Character.isLetterOrDigit(c) || "$_.\\?".indexOf(c) >= 0;
  }

  /** A reference, a name, a function or a number. */
  private boolean word() {
    int end = at;
    while (end < text.length() && inWord(text.charAt(end))) {
      end++;
    }
    String word = text.substring(at, end);
    char before = at > 0 ? text.charAt(at - 1) : ' ';
    char behind = end < text.length() ? text.charAt(end) : ' ';
    at = end;
    if (behind == '!' || behind == '(' || behind == '[') {
      out.append(word); // a sheet, a function, a table
      return true;
    }
    Matcher cell = CELL.matcher(word);
    if (cell.matches()) {
      boolean mayBeSheet = behind == ':' && before != '!' && sheetFrom(end + 1);
      return !mayBeSheet && cell(cell);
    }
    boolean ranged = before == ':' || behind == ':';
    out.append(word);
    return !(ranged && ROW.matcher(word).matches()
        || ranged && columns != 0 && COLUMN.matcher(word).matches());
  }

  /** Returns whether the name of a sheet stands there. */
  private boolean sheetFrom(int from) {
    int end = from;
    if (end < text.length() && text.charAt(end) == '\'') {
      return true;
    }
    while (end < text.length() && inWord(text.charAt(end))) {
      end++;
    }
    return end < text.length() && text.charAt(end) == '!';
  }

  private boolean cell(Matcher cell) {
    int column = SheetStream.columnNumber(cell.group(2), 0);
    int row = Integer.parseInt(cell.group(4));
    if (column > MOST_COLUMNS || row > MOST_ROWS) {
      out.append(cell.group()); // a name that looks like a reference
      return true;
    }
    boolean columnHeld = !cell.group(1).isEmpty();
    int toColumn = columnHeld ? column : column + columns;
    int toRow = cell.group(3).isEmpty() ? row + rows : row;
    if (toColumn < 1 || toColumn > MOST_COLUMNS || toRow < 1 || toRow > MOST_ROWS) {
      return false;
    }
    out.append(cell.group(1))
        .append(toColumn == column ? cell.group(2) : letters(toColumn))
        .append(cell.group(3))
        .append(toRow);
    return true;
  }

  private static String letters(int column) {
    StringBuilder letters = new StringBuilder();
    for (int rest = column; rest > 0; rest = (rest - 1) / 26) {
      letters.insert(0, (char) ('A' + (rest - 1) % 26));
    }
    return letters.toString();
  }
}
