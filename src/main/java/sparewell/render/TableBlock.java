package sparewell.render;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sparewell.finding.Cell;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Layout;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.UnitSystem;

/** A table as a real table of the spreadsheet: filter, banding, sums, notes on the headings. */
final class TableBlock {
  private static final double WIDEST_TEXT_POINTS = 230;
  private static final double NARROWEST_POINTS = 36;

  /** Spreadsheets may not wrap a link, so its column gets more room. */
  private static final double WIDEST_LINK_POINTS = 420;

  private static final double INDENT_POINTS = 8;
  private static final int HEADING_LINES = 2;

  /** The filter's arrow in a heading. */
  private static final double ARROW_POINTS = 14;

  static final String TOTAL = "Total";
  private static final int LONGEST_TEXT = 32_767;

  private TableBlock() {}

  /** Headings with their units, made unique as a spreadsheet's table wants them. */
  static List<String> headings(Table<?> table, UnitSystem units, RenderOptions options) {
    Set<String> seen = new HashSet<>();
    List<String> headings = new ArrayList<>();
    for (Column<?> column : sheetColumns(table)) {
      String plain = column.heading() + bracketedUnit(column.format(), units, options);
      String heading = plain;
      for (int again = 2; !seen.add(heading.toLowerCase(Locale.ROOT)); again++) {
        heading = plain + " " + again;
      }
      headings.add(heading);
    }
    return headings;
  }

  /** Such as {@code " (lb)"}; empty where the value has no unit. */
  static String bracketedUnit(Format format, UnitSystem units, RenderOptions options) {
    String unit = format == Format.MONEY ? options.currency() : format.shownUnit(units);
    return unit.isEmpty() ? "" : " (" + unit + ")";
  }

  static <R> List<Column<R>> sheetColumns(Table<R> table) {
    return table.columns().stream().filter(Column::inSheet).toList();
  }

  /** The value as a cell holds it: a Double, or a String, or null where it is not known. */
  static Object cellValue(Column<?> column, Object value, UnitSystem units, RenderOptions options) {
    Optional<Object> shown =
        Optional.ofNullable(value).flatMap(known -> column.format().shown(known, units));
    if (shown.isEmpty()) {
      return null;
    }
    if (shown.get() instanceof Number number) {
      return ShownNumber.rounded(number, column.format()).doubleValue();
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

  /** Widens the columns of a grid for a table. */
  static <R> void widen(Table<R> table, Grid grid, UnitSystem units, RenderOptions options) {
    if (table.rows().isEmpty()) {
      return;
    }
    List<String> headings = headings(table, units, options);
    int at = 0;
    for (Column<R> column : sheetColumns(table)) {
      double points = NARROWEST_POINTS;
      while (headingLines(headings.get(at), points) > HEADING_LINES) {
        points += 2;
      }
      double widest = WIDEST_TEXT_POINTS;
      for (R row : table.rows()) {
        Object value = cellValue(column, column.value().apply(row), units, options);
        if (value != null) {
          boolean link = value instanceof String && column.link().apply(row).isPresent();
          widest = link ? WIDEST_LINK_POINTS : widest;
          String text = Pattern.shown(value, column.format().pattern(units));
          // Bold, because a bad value is shown so.
          points = Math.max(points, TextSize.width(text, Look.BODY_POINTS, true));
        }
      }
      at++;
      double width = Math.min(widest, points) + INDENT_POINTS + 2 * Measure.CELL_MARGIN_POINTS;
      grid.widths.merge(at, Measure.characters(width), Math::max);
    }
    grid.lastPrintedColumn = Math.max(grid.lastPrintedColumn, at);
  }

  /**
   * Puts a table from a row on.
   *
   * @param name name of the table in the workbook
   * @return the row of its headings; 0 where the table is empty
   */
  static <R> int lay(
      Table<R> table,
      Grid grid,
      int firstRow,
      String name,
      UnitSystem units,
      RenderOptions options) {
    int row = firstRow;
    if (!table.title().isEmpty()) {
      TextBlock.put(table.title(), grid, row++, Look.HEADING);
    }
    if (table.rows().isEmpty()) {
      TextBlock.put(table.whenEmpty(), grid, row, Look.DEFAULT);
      return 0;
    }
    int headingRow = row++;
    List<Column<R>> columns = sheetColumns(table);
    List<String> headings = headings(table, units, options);
    int lastRow = headingRow + table.rows().size();
    List<String> sums = new ArrayList<>();
    for (int at = 0; at < columns.size(); at++) {
      heading(columns.get(at), headings.get(at), grid, headingRow, at + 1, units);
      sums.add(body(columns.get(at), table.rows(), grid, headingRow + 1, at + 1, units, options));
    }
    if (Layout.hasSums(table)) {
      lastRow++;
      if (sums.get(0).isEmpty()) {
        grid.put(lastRow, 1, TOTAL, Look.sum(Look.AS_TEXT));
      }
    }
    String cells = Grid.range(headingRow, 1, lastRow, columns.size());
    grid.tables.add(new Grid.ListTable(name, cells, headings, sums));
    return headingRow;
  }

  private static void heading(
      Column<?> column, String heading, Grid grid, int row, int at, UnitSystem units) {
    grid.put(row, at, heading, Look.tableHead(column.format().pattern(units).equals(Look.AS_TEXT)));
    int lines = headingLines(heading, grid.innerPoints(at));
    grid.atLeast(row, Measure.rowPoints(lines, Look.BODY_POINTS));
    if (!column.meaning().isEmpty()) {
      grid.notes.add(new Grid.Note(row, at, column.meaning()));
    }
  }

  /** Lines of a heading; a word that does not fit counts as too many lines. */
  private static int headingLines(String heading, double width) {
    double free = width - ARROW_POINTS - INDENT_POINTS;
    for (String word : heading.split(" ")) {
      if (TextSize.width(word, Look.BODY_POINTS, true) > free) {
        return Integer.MAX_VALUE;
      }
    }
    return TextSize.lines(heading, Look.BODY_POINTS, true, free);
  }

  /** Puts a column's values, and its sum where it has one; returns the sum's formula. */
  private static <R> String body(
      Column<R> column,
      List<R> rows,
      Grid grid,
      int firstRow,
      int at,
      UnitSystem units,
      RenderOptions options) {
    String pattern = column.format().pattern(units);
    double inner = grid.innerPoints(at) - INDENT_POINTS;
    double sum = 0;
    int row = firstRow;
    for (R one : rows) {
      Object value = cellValue(column, column.value().apply(one), units, options);
      Tone tone = column.tone().apply(one);
      Optional<Cell> link = value == null ? Optional.empty() : column.link().apply(one);
      boolean text = value instanceof String;
      boolean wrap = false;
      if (text) {
        int lines = TextSize.lines((String) value, Look.BODY_POINTS, tone == Tone.BAD, inner);
        wrap = lines > 1;
        if (wrap) {
          grid.atLeast(row, Measure.rowPoints(lines, Look.BODY_POINTS));
        }
      } else if (value != null) {
        sum += (Double) value;
      }
      String cellPattern = text ? Look.AS_TEXT : pattern;
      grid.put(row, at, value, Look.body(cellPattern, tone, wrap, link.isPresent()));
      if (link.isPresent()) {
        grid.links.add(new Grid.Link(Grid.reference(row, at), options.location(link.get())));
      }
      row++;
    }
    if (!column.totalled()) {
      return "";
    }
    String formula = "SUBTOTAL(109," + Grid.range(firstRow, at, row - 1, at) + ")";
    grid.put(row, at, new Grid.Formula(formula, sum), Look.sum(pattern));
    return formula;
  }
}
