package sparewell.workbook.grid;

/**
 * A cell that holds something.
 *
 * @param column counted from 1
 * @param kind what it holds
 * @param text its text; of a number or date empty where it has none worth showing, of an error the
 *     error's name
 * @param number its number; 0 for other kinds
 * @param shape how a number is shown
 * @param formula whether it is a formula without a stored value
 */
public record RawCell(
    int column, Kind kind, String text, double number, NumberShape shape, boolean formula) {

  /** What a cell holds. */
  public enum Kind {
    NUMBER,
    /** A number shown as a date: {@code text} is the date as yyyy-mm-dd, or empty out of range. */
    DATE,
    TEXT,
    BOOLEAN,
    /** An error value such as {@code #N/A}. */
    ERROR,
    /** The file promises a value but does not hold a readable one; {@code text} says what. */
    DAMAGED,
    /** A formula whose value the file lacks and that could not be computed. */
    UNCOMPUTED
  }

  static RawCell text(int column, String text) {
    return new RawCell(column, Kind.TEXT, text, 0, NumberShape.GENERAL, false);
  }

  static RawCell of(int column, Kind kind, String text) {
    return new RawCell(column, kind, text, 0, NumberShape.GENERAL, false);
  }

  static RawCell number(int column, double number, NumberShape shape, DateSystem dates) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      return of(column, Kind.DAMAGED, "a number beyond all bounds");
    }
    if (shape != NumberShape.DATE) {
      return new RawCell(column, Kind.NUMBER, "", number, shape, false);
    }
    String date = dates.date(number).map(Object::toString).orElse("");
    return new RawCell(column, Kind.DATE, date, number, shape, false);
  }

  /** Whether it holds nothing but blanks. */
  public boolean blank() {
    return kind == Kind.TEXT && text.isBlank();
  }
}
