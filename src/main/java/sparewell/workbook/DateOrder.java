package sparewell.workbook;

/** Order of day, month and year in a date written in figures. */
public enum DateOrder {
  YMD("year-month-day"),

  DMY("day-month-year"),

  MDY("month-day-year");

  private final String words;

  DateOrder(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
