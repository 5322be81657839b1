package sparewell.ooxml;

/**
 * A cell to add to a sheet of the angler's.
 *
 * @param column counted from 1
 * @param text value as text; of a date also what is written where the column shows no dates
 * @param number value of a number; day number of a date
 */
public record NewCell(int column, Kind kind, String text, double number) {
  public enum Kind {
    TEXT,
    /** As a number, without the column's format where that shows dates. */
    NUMBER,
    /** As a day number where the column's format shows dates, else as text. */
    DATE,
    /** As a formula without its value: {@code text} is the formula, without an equals sign. */
    FORMULA
  }
}
