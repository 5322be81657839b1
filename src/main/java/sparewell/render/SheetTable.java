package sparewell.render;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/**
 * A table with what its cells will hold, worked out once.
 *
 * @param columns its columns that the sheet has
 * @param headings their headings with units, made unique as a spreadsheet's table wants them
 * @param values their values by column, then row: a Double, a String, or null where not known
 */
record SheetTable<R>(
    Table<R> table,
    List<Column<R>> columns,
    List<String> headings,
    List<String> patterns,
    List<List<Object>> values) {
  private static final int LONGEST_TEXT = 32_767;

  /** Most rows that are seen at a glance. */
  private static final int FEW_ROWS = 12;

  static <R> SheetTable<R> of(Table<R> table, UnitSystem units, RenderOptions options) {
    List<Column<R>> columns = table.columns().stream().filter(Column::inSheet).toList();
    Set<String> seen = new HashSet<>();
    List<String> headings = new ArrayList<>();
    List<String> patterns = new ArrayList<>();
    List<List<Object>> values = new ArrayList<>();
    for (Column<R> column : columns) {
      String plain = column.heading() + bracketedUnit(column.format(), units, options);
      String heading = plain;
      for (int again = 2; !seen.add(heading.toLowerCase(Locale.ROOT)); again++) {
        heading = plain + " " + again;
      }
      headings.add(heading);
      boolean entered =
          table.rows().stream().anyMatch(row -> column.entry().apply(row).isPresent());
      patterns.add(entered ? Look.GENERAL : column.pattern(units));
      List<Object> inColumn = new ArrayList<>(table.rows().size());
      for (R row : table.rows()) {
        inColumn.add(cellValue(column.format(), column.value().apply(row), units, options));
      }
      values.add(inColumn);
    }
    return new SheetTable<>(table, columns, headings, patterns, values);
  }

  /** Returns whether there are enough rows to filter; what is written in by hand stays whole. */
  boolean filtered() {
    return table.rows().size() > FEW_ROWS && !roomy();
  }

  boolean roomy() {
    return table.rows().stream()
        .limit(1)
        .flatMap(row -> columns.stream().flatMap(column -> column.entry().apply(row).stream()))
        .anyMatch(entry -> entry.heightPoints() > 0);
  }

  /**
   * Returns whether a heading has the filter's arrow; on a crowded sheet only one over text has, as
   * the arrows take room and numbers are seldom filtered.
   */
  boolean arrow(int at, boolean crowded) {
    return filtered() && (overText(at) || !crowded);
  }

  boolean overText(int at) {
    return List.of(Look.AS_TEXT, Look.GENERAL).contains(patterns.get(at));
  }

  /** Unit such as {@code " (lb)"}; empty where the value has no unit. */
  static String bracketedUnit(Format format, UnitSystem units, RenderOptions options) {
    String unit = format == Format.MONEY ? options.currency() : format.shownUnit(units);
    return unit.isEmpty() ? "" : " (" + unit + ")";
  }

  /** A value as a cell holds it: a Double, a String, or null where not known. */
  static Object cellValue(Format format, Object value, UnitSystem units, RenderOptions options) {
    Optional<Object> shown =
        Optional.ofNullable(value).flatMap(known -> format.shown(known, units));
    if (shown.isEmpty()) {
      return null;
    }
    if (shown.get() instanceof Long whole) {
      return whole.doubleValue();
    }
    if (shown.get() instanceof Number number) {
      return format.rounded(number).doubleValue();
    }
    if (shown.get() instanceof LocalDate date) {
      return (double) ChronoUnit.DAYS.between(options.dayZero(), date);
    }
    String text = shown.get().toString();
    if (text.isEmpty()) {
      return null;
    }
    return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT - 1) + "…";
  }
}
