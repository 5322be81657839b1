package sparewell.workbook;

/** In which order a date made of figures alone is written. */
public enum DateOrder {
  /** Year, month, day. */
  YMD("year-month-day"),
  /** Day, month, year. */
  DMY("day-month-year"),
  /** Month, day, year. */
  MDY("month-day-year");

  private final String words;

  DateOrder(String words) {
    this.words = words;
  }

  /** Like {@code day-month-year}. */
  public String words() {
    return words;
  }
}
