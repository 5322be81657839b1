package sparewell.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.IntSupplier;
import sparewell.finding.Cell;
import sparewell.table.Entry;
import sparewell.table.Layout;

/** A sheet while it is being laid out: cells, widths, and what hangs on them. Counts from 1. */
final class Grid {
  record Formula(String text, double value) {}

  record RichText(List<Run> runs) {}

  record Run(String text, double points, boolean bold) {}

  /** A filled cell: a String, Double, {@link Formula}, {@link RichText}, or null for none. */
  record Filled(Object value, int look) {}

  record Link(String cells, String location) {}

  record Note(int row, int column, String text) {}

  /**
   * A table of the spreadsheet: columns by name, formulas of sums by column where there are any,
   * and which columns have an arrow to filter by.
   */
  record ListTable(
      String name, String cells, List<String> columns, List<String> sums, List<Boolean> arrows) {
    boolean filtered() {
      return arrows.contains(true);
    }

    boolean hasSums() {
      return sums.stream().anyMatch(sum -> !sum.isEmpty());
    }
  }

  /** Cells below each other that are filled by one rule. */
  record Stretch(int column, int firstRow, int lastRow) {
    String cells() {
      return firstRow == lastRow
          ? reference(firstRow, column)
          : range(firstRow, column, lastRow, column);
    }
  }

  /** Something drawn over cells, sizes in EMU, {@code leftPoints} from the left of the sheet. */
  record Drawn(
      int row,
      double leftPoints,
      long width,
      long height,
      Optional<Plot> chart,
      Function<Anchor, String> content) {}

  /** Ids for the shapes of a drawing part, and the relationship to its chart, empty without one. */
  record Anchor(IntSupplier ids, String chart) {}

  final String name;
  final SortedMap<Integer, SortedMap<Integer, Filled>> rows = new TreeMap<>();
  final Map<Integer, Double> heights = new HashMap<>();
  final SortedMap<Integer, Double> widths = new TreeMap<>();
  final List<String> merged = new ArrayList<>();
  final List<Link> links = new ArrayList<>();
  final Map<Entry, List<Stretch>> entries = new LinkedHashMap<>();
  final List<Note> notes = new ArrayList<>();
  final List<ListTable> tables = new ArrayList<>();
  final List<Drawn> drawn = new ArrayList<>();

  /** Rows that are kept on one page where that costs little: the last by the first. */
  final SortedMap<Integer, Integer> together = new TreeMap<>();

  /** Rows of titles that stand above what is drawn from the next row on. */
  final Set<Integer> titlesOfDrawn = new HashSet<>();

  final Set<Integer> pageStarts = new HashSet<>();

  final List<Integer> pageBreaks = new ArrayList<>();

  /** Columns that text above and between tables spans. */
  int textColumns = 1;

  /** Last of the columns after those that links beside the text span. */
  int linkColumns = 2;

  int lastPrintedColumn = 1;

  /** First column free for figures that are not printed. */
  int sideColumn = 1;

  int firstPrintedRow = 1;
  int lastPrintedRow = 1;

  /** Row of headings that is repeated on every page; 0 for none. */
  int headingRow;

  /** Rows on top that stay in view; 0 for none. */
  int rowsInView;

  /** True where a table has so many columns that each is kept narrow, to stay readable on paper. */
  boolean crowded;

  /** True where it is shrunk to one page, because a few rows would be left for a second. */
  boolean onOnePage;

  boolean exactSize;

  /** Enlargement of all that is written; what is laid out here is at usual size. */
  final double print;

  /** Factor of stored widths for the workbook's normal font. */
  final double widthFactor;

  private final Looks looks;

  Grid(String name, Looks looks, double print, double widthFactor) {
    this.name = name;
    this.looks = looks;
    this.print = print;
    this.widthFactor = widthFactor;
  }

  void put(int row, int column, Object value, Look look) {
    Filled filled = new Filled(value, looks.index(look.larger(print)));
    rows.computeIfAbsent(row, key -> new TreeMap<>()).put(column, filled);
  }

  void enter(int row, int column, Object value, Entry entry) {
    boolean date = entry.rule() == Entry.Rule.DATE;
    put(row, column, value, Look.entry(date ? "yyyy-mm-dd" : Look.GENERAL));
    if (entry.heightPoints() > 0) {
      atLeast(row, entry.heightPoints());
    }
    List<Stretch> all = entries.computeIfAbsent(entry, key -> new ArrayList<>());
    int last = all.size() - 1;
    if (last >= 0 && all.get(last).column() == column && all.get(last).lastRow() == row - 1) {
      all.set(last, new Stretch(column, all.get(last).firstRow(), row));
    } else {
      all.add(new Stretch(column, row, row));
    }
  }

  /** Merges cells of one row; the look is given to all, so that fills and lines are whole. */
  void merge(int row, int first, int last, Look look) {
    if (last > first) {
      for (int column = first + 1; column <= last; column++) {
        put(row, column, null, look);
      }
      merged.add(range(row, first, row, last));
    }
  }

  void atLeast(int row, double points) {
    heights.merge(row, points, Math::max);
  }

  double innerPoints(int column) {
    return points(column) - Measure.CELL_MARGIN_POINTS;
  }

  double points(int column) {
    return widths.getOrDefault(column, Measure.DEFAULT_WIDTH) * Measure.POINTS_PER_CHARACTER;
  }

  double pointsAcross(int columns) {
    double points = 0;
    for (int column = 1; column <= columns; column++) {
      points += points(column);
    }
    return points;
  }

  double height(int row) {
    return heights.getOrDefault(row, Layout.ROW_POINTS);
  }

  double pointsDown(int first, int last) {
    double points = 0;
    for (int row = first; row <= last; row++) {
      points += height(row);
    }
    return points;
  }

  int lastRow() {
    return rows.isEmpty() ? 1 : rows.lastKey();
  }

  static String reference(int row, int column) {
    return new Cell("", row, column).reference();
  }

  static String range(int firstRow, int firstColumn, int lastRow, int lastColumn) {
    return reference(firstRow, firstColumn) + ":" + reference(lastRow, lastColumn);
  }

  /** Reference such as {@code $A$1:$F$30}. */
  static String fixedRange(int firstRow, int firstColumn, int lastRow, int lastColumn) {
    return fixed(firstRow, firstColumn) + ":" + fixed(lastRow, lastColumn);
  }

  static String quoted(String sheet) {
    return "'" + sheet.replace("'", "''") + "'";
  }

  private static String fixed(int row, int column) {
    String plain = reference(row, column);
    int digits = String.valueOf(row).length();
    return "$" + plain.substring(0, plain.length() - digits) + "$" + row;
  }
}
