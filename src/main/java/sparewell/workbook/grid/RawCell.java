package sparewell.workbook.grid;

/**
 * A cell that holds something.
 *
 * @param column counted from 1
 * @param text its text: of a date yyyy-mm-dd, of an error its name, of a number empty
 * @param number its number; 0 for other kinds
 */
public record RawCell(int column, Kind kind, String text, double number, NumberShape shape) {

  public enum Kind {
    NUMBER,
    /** A number shown as a date; its text is empty where the number names no day. */
    DATE,
    TEXT,
    BOOLEAN,
    /** An error value such as {@code #N/A}. */
    ERROR,
    /** An unreadable value; {@code text} describes it. */
    DAMAGED,
    /** A formula without a stored value. */
    UNCOMPUTED
  }

  public static RawCell text(int column, String text) {
    return of(column, Kind.TEXT, text);
  }

  public static RawCell of(int column, Kind kind, String text) {
    return new RawCell(column, kind, text, 0, NumberShape.GENERAL);
  }

  static RawCell number(int column, double number, NumberShape shape, DateSystem dates) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      return of(column, Kind.DAMAGED, "a number beyond all bounds");
    }
    if (shape != NumberShape.DATE) {
      return new RawCell(column, Kind.NUMBER, "", number, shape);
    }
    String date = dates.date(number).map(Object::toString).orElse("");
    return new RawCell(column, Kind.DATE, date, number, shape);
  }

  public boolean blank() {
    return kind == Kind.TEXT && text.isBlank();
  }
}
