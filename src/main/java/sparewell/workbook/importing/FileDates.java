package sparewell.workbook.importing;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheets;
import sparewell.workbook.read.BoundColumn;
import sparewell.workbook.value.Dates;
import sparewell.workbook.value.Names;

/** Order of day and month in dates in figures, if known, and the date that proves it, if any. */
record FileDates(Optional<DateOrder> order, Optional<String> proof) {
  private static final Pattern FIGURES =
      Pattern.compile(
          "(\\d{1,2})[-/. ](\\d{1,2})[-/. ](\\d{4}|\\d{2})(?:[T, ]+\\d{1,2}:\\d{2}.*)?");
  private static final int CENTURY = 2000;

  /** Uses the order given, else the one that at least one date proves and none contradicts. */
  static FileDates of(
      Optional<DateOrder> given, Iterable<BoundColumn> columns, List<CsvTable.Line> lines) {
    if (given.isPresent()) {
      return new FileDates(given, Optional.empty());
    }
    List<String> dayFirst = new ArrayList<>();
    List<String> monthFirst = new ArrayList<>();
    for (BoundColumn column : columns) {
      for (CsvTable.Line line : lines) {
        String text = Names.clean(line.at(column.index()));
        Matcher figures = FIGURES.matcher(text);
        if (holdsDates(column.column()) && figures.matches() && figures.group(3).length() == 4) {
          boolean day = date(figures, DateOrder.DMY).isPresent();
          boolean month = date(figures, DateOrder.MDY).isPresent();
          if (day != month) {
            (day ? dayFirst : monthFirst).add(text);
          }
        }
      }
    }
    if (dayFirst.isEmpty() == monthFirst.isEmpty()) {
      return new FileDates(Optional.empty(), Optional.empty());
    }
    return dayFirst.isEmpty()
        ? new FileDates(Optional.of(DateOrder.MDY), Optional.of(monthFirst.get(0)))
        : new FileDates(Optional.of(DateOrder.DMY), Optional.of(dayFirst.get(0)));
  }

  /** Returns whether a column holds dates: its own, or trips, which may go by theirs. */
  static boolean holdsDates(InputColumn column) {
    return column.kind() == InputColumn.Kind.DATE || column.refersTo().equals("Trips");
  }

  /** A date in figures as yyyy-mm-dd; any other text as it is. */
  String plain(String text) {
    Matcher figures = FIGURES.matcher(text);
    return figures.matches() && order.isPresent()
        ? date(figures, order.get()).map(LocalDate::toString).orElse(text)
        : text;
  }

  /** Returns whether a text is a date in figures whose order is not known. */
  boolean open(String text) {
    return order.isEmpty() && Dates.iso(text).isEmpty() && FIGURES.matcher(text).matches();
  }

  private static Optional<LocalDate> date(Matcher figures, DateOrder order) {
    int first = Integer.parseInt(figures.group(1));
    int second = Integer.parseInt(figures.group(2));
    int third = Integer.parseInt(figures.group(3));
    int last = figures.group(3).length() == 2 ? CENTURY + third : third;
    try {
      LocalDate date =
          switch (order) {
            case DMY -> LocalDate.of(last, second, first);
            case MDY -> LocalDate.of(last, first, second);
            case YMD -> LocalDate.of(CENTURY + first, second, third);
          };
      return Optional.of(date).filter(InputSheets::isPlausible);
    } catch (DateTimeException notADay) {
      return Optional.empty();
    }
  }
}
