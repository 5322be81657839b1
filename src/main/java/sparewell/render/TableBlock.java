package sparewell.render;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.table.Column;
import sparewell.table.Entry;
import sparewell.table.Layout;
import sparewell.table.Table;
import sparewell.table.Tone;

/** A table as a real table of the spreadsheet: filter, banding, sums, notes on the headings. */
final class TableBlock {
  private static final double WIDEST_TEXT_POINTS = 230;
  private static final double NARROWEST_POINTS = 30;

  /** Text of a column that a wider table than its own shares. */
  private static final double WIDEST_BESIDE_POINTS = 74;

  private static final double WIDEST_FIRST_POINTS = 130;

  /** Spreadsheets may not wrap a link, so its column gets more room. */
  private static final double WIDEST_LINK_POINTS = 420;

  /** On a crowded sheet; a table beside the main one gets even less. */
  private static final double WIDEST_CROWDED_POINTS = 270;

  private static final double WIDEST_CROWDED_BESIDE_POINTS = 68;

  /**
   * On a crowded sheet so many of the texts fit in one line, and the few longer ones are wrapped.
   */
  private static final double IN_ONE_LINE_SHARE = 0.95;

  private static final double INDENT_POINTS = 8;
  private static final double AROUND_POINTS = INDENT_POINTS + 2 * Measure.CELL_MARGIN_POINTS;
  private static final int HEADING_LINES = 3;

  /** The filter's arrow in a heading. */
  private static final double ARROW_POINTS = 14;

  /** Digits between the marks of thousands. */
  private static final int GROUP = 3;

  private TableBlock() {}

  /**
   * Widens the columns of a grid for a table.
   *
   * @param leads whether it is the sheet's main table; the text of the others is wrapped sooner, so
   *     that they do not stretch the columns of the main one
   */
  static <R> void widen(SheetTable<R> table, Grid grid, boolean leads) {
    if (table.table().rows().isEmpty()) {
      return;
    }
    for (int at = 0; at < table.columns().size(); at++) {
      double points = NARROWEST_POINTS;
      double reserved = reserved(table, at, grid.crowded);
      while (headingLines(table.headings().get(at), points - reserved) > HEADING_LINES) {
        points += 2;
      }
      points = Math.max(points, entryPoints(table.table(), table.columns().get(at)));
      double most =
          linksText(table, at) ? WIDEST_LINK_POINTS : widest(leads, grid.crowded, at == 0);
      points = Math.max(points, Math.min(most, widest(table, at, grid.crowded)));
      points = Math.max(points, Math.min(WIDEST_TEXT_POINTS, longestWord(table, at)));
      if (!grid.crowded) {
        points = besideArrow(table.headings().get(at), points, reserved);
      }
      grid.widths.merge(at + 1, Measure.characters(points + AROUND_POINTS), Math::max);
    }
    grid.lastPrintedColumn = Math.max(grid.lastPrintedColumn, table.columns().size());
  }

  private static <R> double entryPoints(Table<R> table, Column<R> column) {
    return table.rows().stream()
        .flatMap(row -> column.entry().apply(row).stream())
        .mapToDouble(Entry::widthPoints)
        .max()
        .orElse(0);
  }

  /** Widened until no line of a heading runs on under the arrow, where a program wraps it later. */
  private static double besideArrow(String heading, double points, double reserved) {
    double wide = points;
    while (TextSize.lines(heading, Look.BODY_POINTS, true, wide + INDENT_POINTS)
        < headingLines(heading, wide - reserved)) {
      wide += 2;
    }
    return wide;
  }

  private static double widest(boolean leads, boolean crowded, boolean first) {
    if (leads) {
      return crowded ? WIDEST_CROWDED_POINTS : WIDEST_TEXT_POINTS;
    }
    if (first) {
      return WIDEST_FIRST_POINTS;
    }
    return crowded ? WIDEST_CROWDED_BESIDE_POINTS : WIDEST_BESIDE_POINTS;
  }

  /** Width of a column's widest value, bold because a bad one is; of numbers only the ends. */
  private static double widest(SheetTable<?> table, int at, boolean crowded) {
    List<Double> texts = new ArrayList<>();
    double points = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Object value : table.values().get(at)) {
      if (value instanceof Double number) {
        least = Math.min(least, number);
        most = Math.max(most, number);
      } else if (value != null) {
        String text = (String) value;
        texts.add(TextSize.width(text, Look.BODY_POINTS, true));
      }
    }
    if (!texts.isEmpty()) {
      Collections.sort(texts);
      int fits = (int) Math.ceil(texts.size() * (crowded ? IN_ONE_LINE_SHARE : 1));
      points = Math.max(points, texts.get(fits - 1));
    }
    if (least <= most) {
      String pattern = table.patterns().get(at);
      for (double end : List.of(least, most)) {
        String text = shown(end, pattern);
        points = Math.max(points, TextSize.width(text, Look.BODY_POINTS, true));
      }
    }
    return points;
  }

  /** Text that a cell shows of a number, near enough to find its width. */
  private static String shown(double number, String pattern) {
    if (pattern.startsWith("yyyy")) {
      return pattern;
    }
    String general = pattern.substring(pattern.lastIndexOf(';') + 1); // the last section
    int point = general.indexOf('.');
    int decimals =
        point < 0 ? 0 : (int) general.substring(point).chars().filter(c -> c == '0').count();
    boolean percent = general.endsWith("%");
    String digits =
        BigDecimal.valueOf(percent ? number * 100 : number)
            .setScale(decimals, RoundingMode.HALF_UP)
            .toPlainString();
    int groups = general.contains(",") ? digits.length() / GROUP : 0;
    return digits + ",".repeat(groups) + (percent ? "%" : "");
  }

  private static double longestWord(SheetTable<?> table, int at) {
    return table.values().get(at).stream()
        .filter(String.class::isInstance)
        .flatMap(text -> Stream.of(((String) text).split(" ")))
        .mapToDouble(word -> TextSize.width(word, Look.BODY_POINTS, true))
        .max()
        .orElse(0);
  }

  private static <R> boolean linksText(SheetTable<R> table, int at) {
    List<R> rows = table.table().rows();
    List<Object> values = table.values().get(at);
    Column<R> column = table.columns().get(at);
    for (int i = 0; i < rows.size(); i++) {
      if (values.get(i) instanceof String && column.link().apply(rows.get(i)).isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** Puts a table from a row on; returns the row of its headings, 0 where it is empty. */
  static <R> int lay(
      SheetTable<R> prepared, Grid grid, int firstRow, String name, RenderOptions options) {
    Table<R> table = prepared.table();
    int row = firstRow;
    if (!table.title().isEmpty()) {
      TextBlock.put(table.title(), grid, row++, Look.HEADING);
    }
    if (table.rows().isEmpty()) {
      TextBlock.put(table.whenEmpty(), grid, row, Look.DEFAULT);
      return 0;
    }
    int headingRow = row++;
    int lastRow = headingRow + table.rows().size();
    List<String> sums = new ArrayList<>();
    for (int at = 0; at < prepared.columns().size(); at++) {
      heading(prepared, grid, headingRow, at);
      body(prepared, grid, headingRow + 1, at, options);
      sums.add(sum(prepared, grid, headingRow + 1, at));
    }
    if (Layout.hasSums(table)) {
      lastRow++;
      if (sums.get(0).isEmpty()) {
        grid.put(lastRow, 1, Table.TOTAL, Look.sum(Look.AS_TEXT));
      }
    }
    String cells = Grid.range(headingRow, 1, lastRow, prepared.columns().size());
    List<Boolean> arrows =
        IntStream.range(0, prepared.columns().size())
            .mapToObj(at -> prepared.arrow(at, grid.crowded))
            .toList();
    grid.tables.add(new Grid.ListTable(name, cells, prepared.headings(), sums, arrows));
    return headingRow;
  }

  private static void heading(SheetTable<?> table, Grid grid, int row, int at) {
    String heading = table.headings().get(at);
    boolean arrow = table.arrow(at, grid.crowded);
    grid.put(row, at + 1, heading, Look.tableHead(table.overText(at), arrow));
    double points = grid.points(at + 1) - AROUND_POINTS;
    int lines = headingLines(heading, points - reserved(table, at, grid.crowded));
    grid.atLeast(row, Measure.rowPoints(lines, Look.BODY_POINTS));
    String meaning = table.columns().get(at).meaning();
    if (!meaning.isEmpty()) {
      grid.notes.add(new Grid.Note(row, at + 1, meaning));
    }
  }

  /** Room that the filter's arrow and the gap before the next heading take of a heading's width. */
  private static double reserved(SheetTable<?> table, int at, boolean crowded) {
    if (!table.arrow(at, crowded)) {
      return 0;
    }
    return ARROW_POINTS + (crowded ? 0 : INDENT_POINTS);
  }

  /** Lines of a heading; a word that does not fit counts as too many lines. */
  private static int headingLines(String heading, double free) {
    for (String word : heading.split(" ")) {
      if (TextSize.width(word, Look.BODY_POINTS, true) > free) {
        return Integer.MAX_VALUE;
      }
    }
    return TextSize.lines(heading, Look.BODY_POINTS, true, free);
  }

  private static <R> void body(
      SheetTable<R> table, Grid grid, int firstRow, int at, RenderOptions options) {
    Column<R> column = table.columns().get(at);
    double inner = grid.innerPoints(at + 1) - INDENT_POINTS;
    int row = firstRow;
    Look.Edge edge = table.roomy() ? Look.Edge.UNDER_ROOM : Look.Edge.UNDER;
    for (R one : table.table().rows()) {
      Object value = table.values().get(at).get(row - firstRow);
      Optional<Entry> entry = column.entry().apply(one);
      if (entry.isPresent()) {
        grid.enter(row++, at + 1, value, entry.get());
        continue;
      }
      Tone tone = column.tone().apply(one);
      Optional<Cell> link = value == null ? Optional.empty() : column.link().apply(one);
      boolean wrap = false;
      if (value instanceof String text) {
        int lines = TextSize.lines(text, Look.BODY_POINTS, tone == Tone.BAD, inner);
        wrap = lines > 1;
        if (wrap) {
          grid.atLeast(row, Measure.rowPoints(lines, Look.BODY_POINTS));
        }
      }
      String pattern = value instanceof String ? Look.AS_TEXT : table.patterns().get(at);
      grid.put(row, at + 1, value, Look.body(pattern, tone, edge, wrap, link.isPresent()));
      if (link.isPresent()) {
        grid.links.add(new Grid.Link(Grid.reference(row, at + 1), options.location(link.get())));
      }
      row++;
    }
  }

  /** Puts a column's sum where it has one; returns its formula, empty where it has none. */
  private static String sum(SheetTable<?> table, Grid grid, int firstRow, int at) {
    if (!table.columns().get(at).totalled()) {
      return "";
    }
    double sum = 0;
    for (Object value : table.values().get(at)) {
      sum += value instanceof Double number ? number : 0;
    }
    int below = firstRow + table.table().rows().size();
    String formula = "SUBTOTAL(109," + Grid.range(firstRow, at + 1, below - 1, at + 1) + ")";
    grid.put(below, at + 1, new Grid.Formula(formula, sum), Look.sum(table.patterns().get(at)));
    return formula;
  }
}
