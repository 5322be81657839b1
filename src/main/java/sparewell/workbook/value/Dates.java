package sparewell.workbook.value;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.finding.Code;
import sparewell.workbook.InputSheets;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawCell;

/** Reads dates, and fractions that a spreadsheet program turned into dates. */
public final class Dates {
  private static final Pattern YEAR_FIRST =
      Pattern.compile("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})(?:[T ]\\d{1,2}:\\d{2}.*)?");
  private static final DateTimeFormatter MONTH_NAMED =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .appendPattern("[d MMM uuuu][d MMMM uuuu][MMM d uuuu][MMMM d uuuu]")
          .toFormatter(Locale.ENGLISH);

  private Dates() {}

  /** A typed fraction that a spreadsheet program stored as a date. */
  record TypedFraction(String text, double value) {}

  /** A date between 1950 and 2199. */
  public static Optional<LocalDate> date(RawCell cell, DateSystem dates, Remarks remarks) {
    Optional<LocalDate> date =
        switch (cell.kind()) {
          case DATE -> iso(cell.text());
          case TEXT -> typed(cell.text(), remarks);
          case NUMBER -> dayNumber(cell, dates, remarks);
          default -> Optional.empty();
        };
    Optional<LocalDate> good = date.filter(InputSheets::isPlausible);
    if (good.isEmpty()) {
      remarks.unusable(Code.NOT_A_DATE, "");
    }
    return good;
  }

  /** The date of a text that begins with a year; absent otherwise. */
  public static Optional<LocalDate> iso(String text) {
    Matcher parts = YEAR_FIRST.matcher(Names.clean(text));
    if (!parts.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          LocalDate.of(
              Integer.parseInt(parts.group(1)),
              Integer.parseInt(parts.group(2)),
              Integer.parseInt(parts.group(3))));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> typed(String text, Remarks remarks) {
    Optional<LocalDate> iso = iso(text);
    if (iso.isPresent()) {
      return iso;
    }
    String plain = Names.clean(text).replaceAll("[.,]", " ").replaceAll(" +", " ").strip();
    try {
      LocalDate date = LocalDate.parse(plain, MONTH_NAMED);
      remarks.assumed(Code.ASSUMED_DATE, date.toString());
      return Optional.of(date);
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> dayNumber(RawCell cell, DateSystem dates, Remarks remarks) {
    Optional<LocalDate> date = dates.date(cell.number());
    date.filter(InputSheets::isPlausible)
        .ifPresent(day -> remarks.assumed(Code.ASSUMED_DATE, day.toString()));
    return date;
  }

  /**
   * Fraction that was stored as a date: month over day. The first of a month in 1932 or 1964 stands
   * for month/32 or month/64, which spreadsheet programs read as month and year.
   */
  static Optional<TypedFraction> typedFraction(RawCell cell) {
    return iso(cell.text()).map(Dates::typedFraction);
  }

  private static TypedFraction typedFraction(LocalDate date) {
    boolean year = date.getDayOfMonth() == 1 && (date.getYear() == 1932 || date.getYear() == 1964);
    int bottom = year ? date.getYear() - 1900 : date.getDayOfMonth();
    return new TypedFraction(
        date.getMonthValue() + "/" + bottom, date.getMonthValue() / (double) bottom);
  }
}
