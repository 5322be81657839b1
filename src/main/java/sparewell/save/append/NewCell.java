package sparewell.save.append;

/**
 * A cell to add to a sheet of the angler's.
 *
 * @param column counted from 1
 * @param kind how its value is written
 * @param text its text; of a date the text that is written where the column shows no dates
 * @param number its number; of a date its day number
 */
public record NewCell(int column, Kind kind, String text, double number) {
  /** How a value is written. */
  public enum Kind {
    /** As text. */
    TEXT,
    /** As a number, without the column's format where that shows dates. */
    NUMBER,
    /** As a day number where the column's format shows dates, else as text. */
    DATE,
    /** As a formula without its value yet: {@code text} is the formula, without an equals sign. */
    FORMULA
  }
}
