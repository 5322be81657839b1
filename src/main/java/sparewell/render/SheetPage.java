package sparewell.render;

import java.util.Collection;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import sparewell.table.Block;
import sparewell.table.Chart;
import sparewell.table.Column;
import sparewell.table.Drawing;
import sparewell.table.LabelGrid;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Lays out one sheet: the answer on top, then its blocks below each other. */
final class SheetPage {
  private static final double TEXT_POINTS = 530;

  /** Text with links beside it may end earlier, so that the links stand near. */
  private static final double LINKED_TEXT_POINTS = 350;

  private static final double LINK_POINTS = 110;

  /** The answer is no wider than a small screen. */
  private static final double MOST_ANSWER_POINTS = 900;

  /** Rows of which the headings stay in view, whatever follows. */
  private static final int MANY_SCREENS = 100;

  /** Headings stay in view only where enough of the screen is left below them. */
  private static final double MOST_POINTS_IN_VIEW = 170;

  private static final double LARGE_PRINT = 1.4;

  private static final int MANY_PAGES = 12; // of which none is worth smaller print

  /** A table that goes on without its headings is as bad as a further page. */
  private static final Comparator<PageBreaks.Breaks> FEWEST =
      Comparator.<PageBreaks.Breaks>comparingInt(breaks -> breaks.pages() + breaks.split())
          .thenComparingInt(PageBreaks.Breaks::split);

  private static final double LONG_SHARE = 0.6;

  private static final int CROWDED_COLUMNS = 10;

  /** Percent of the usual size of letters; smaller print is for want of room only. */
  private static final int LEAST_READABLE_PERCENT = 70;

  /** A page is turned against its shape only with room for columns that come out wider. */
  private static final int LEAST_TURNED_PERCENT = 75;

  /**
   * Most lines of a text that leads to what follows, and is not left alone at the foot of a page.
   */
  private static final int FEW_LINES = 3;

  private static final int ROWS_AFTER_TEXT = 6;

  /** Rows at the end of a table that stand on one page, so that sums are not left alone. */
  private static final int LAST_ROWS = 4;

  private final ReportSheet sheet;
  private final Grid grid;
  private final SheetRenderer.TableNames names;
  private final UnitSystem units;
  private final RenderOptions options;
  private final Map<Table<?>, SheetTable<?>> tables = new IdentityHashMap<>();

  SheetPage(
      ReportSheet sheet,
      Looks looks,
      SheetRenderer.TableNames names,
      UnitSystem units,
      RenderOptions options) {
    this.sheet = sheet;
    this.names = names;
    this.units = units;
    this.options = options;
    double print = sheet.largePrint() ? LARGE_PRINT : 1;
    this.grid = new Grid(options.actualName(sheet.name()), looks, print, names.widthFactor());
  }

  record Laid(Grid grid, Page page) {}

  Laid laid() {
    widen();
    answer();
    Page page = Page.fitting(width(), units);
    int row = Layout.FIRST_ROW;
    int lastPrinted = Integer.MAX_VALUE;
    for (Block block : sheet.shown()) {
      if (block instanceof Block.EndOfPrint) {
        lastPrinted = Math.min(lastPrinted, row - 2);
      }
      if (block instanceof LabelGrid labels) {
        page = Page.exact(labels, units);
        row = LabelBlock.lay(labels, page, grid, row);
      } else {
        lay(block, row);
        keepTogether(block, row);
        if (Layout.printedRowsOf(block) < Layout.rowsOf(block)) {
          lastPrinted = Math.min(lastPrinted, row + Layout.printedRowsOf(block) - 1);
        }
        row += Layout.rowsOf(block) + 1;
      }
    }
    grid.lastPrintedRow = Math.max(1, Math.min(lastPrinted, row - 2));
    if (sheet.largePrint()) {
      grid.onOnePage = true; // one sheet of paper to take along
      page = Page.full(units).scaledTo(width());
    } else if (!grid.exactSize) {
      page = paged(page);
    }
    return new Laid(grid, page);
  }

  private double width() {
    return grid.pointsAcross(grid.lastPrintedColumn) * grid.print;
  }

  private void widen() {
    for (Block block : sheet.shown()) {
      if (block instanceof Block.Rows rows) {
        tables.put(rows.table(), SheetTable.of(rows.table(), units, options));
      }
    }
    grid.crowded =
        tables.values().stream().anyMatch(table -> table.columns().size() >= CROWDED_COLUMNS);
    for (SheetTable<?> table : tables.values()) {
      TableBlock.widen(table, grid, leads(table, tables.values()));
    }
    for (Block block : sheet.shown()) {
      if (block instanceof LabelGrid labels) {
        LabelBlock.widen(labels, grid);
      } else if (block instanceof Block.Form form) {
        FormBlock.widen(form, grid);
      }
    }
    spread();
  }

  private void answer() {
    int across = grid.lastPrintedColumn;
    while (across > grid.textColumns && grid.pointsAcross(across) > MOST_ANSWER_POINTS) {
      across--;
    }
    TextBlock.put(sheet.answer(), grid, 1, across, Look.ANSWER);
    grid.rowsInView = grid.exactSize ? 0 : 1;
  }

  private void lay(Block block, int row) {
    if (block instanceof Block.NewPage) {
      grid.pageStarts.add(row + 1); // behind the blank row
    } else if (block instanceof Block.Text text) {
      TextBlock.lay(text, grid, row, options);
    } else if (block instanceof Block.Form form) {
      FormBlock.lay(form, grid, row, units, options);
    } else if (block instanceof Block.Rows rows) {
      String name = names.next(sheet, rows);
      keepInView(rows.table(), TableBlock.lay(tables.get(rows.table()), grid, row, name, options));
    } else if (block instanceof Chart chart) {
      SheetTable<?> known = tables.get(chart.data());
      SheetTable<?> data = known == null ? SheetTable.of(chart.data(), units, options) : known;
      ChartBlock.lay(sheet, chart, data, grid, row);
    } else if (block instanceof Drawing drawing) {
      ShapesXml.lay(drawing, grid, row);
    }
  }

  private void keepTogether(Block block, int row) {
    int rows = Layout.rowsOf(block);
    if (block instanceof Block.Text text) {
      boolean few = text.lines().size() <= FEW_LINES;
      grid.together.put(row, row + (few ? rows + ROWS_AFTER_TEXT : FEW_LINES - 1));
    } else if (block instanceof Block.Rows || block instanceof Block.Form) {
      int last = row + rows - 1;
      grid.together.put(row, last);
      grid.together.putIfAbsent(Math.max(row, last - LAST_ROWS + 1), last);
    }
  }

  /**
   * The page for a sheet, upright or lying: one page where its print stays readable, else that of
   * the fewest pages and tables that go on without their headings. The spreadsheet shrinks it to
   * the width, whatever fonts there are; breaks before what would be split go into the grid.
   */
  private Page paged(Page usual) {
    for (Page page : List.of(usual, usual.turned())) {
      int widest = page.scaledTo(width()).scalePercent();
      Page least = page.scaled(LEAST_READABLE_PERCENT);
      if ((page == usual || widest >= LEAST_TURNED_PERCENT)
          && PageBreaks.of(grid, least).pages() == 1) {
        grid.onOnePage = true;
        return page;
      }
    }
    return readable(usual, width());
  }

  /** The same where it takes several pages; of equal ones that with the largest print. */
  private Page readable(Page usual, double width) {
    Page best = usual.scaledTo(width);
    PageBreaks.Breaks breaks = PageBreaks.of(grid, best);
    for (Page fitting : List.of(best, usual.turned().scaledTo(width))) {
      int readable =
          fitting.landscape() == usual.landscape() ? LEAST_READABLE_PERCENT : LEAST_TURNED_PERCENT;
      int least = breaks.pages() > MANY_PAGES ? fitting.scalePercent() : readable;
      for (int percent = fitting.scalePercent(); percent >= least; percent--) {
        Page smaller = fitting.scaled(percent);
        for (PageBreaks.Breaks other :
            List.of(PageBreaks.of(grid, smaller), PageBreaks.keepingWhole(grid, smaller))) {
          int fewer = FEWEST.compare(other, breaks);
          boolean shrunk = percent < fitting.scalePercent(); // smaller print must save a page
          if (fewer < 0 && (!shrunk || other.pages() < breaks.pages())
              || fewer == 0 && percent > best.scalePercent()) {
            best = smaller;
            breaks = other;
          }
        }
      }
    }
    grid.pageBreaks.addAll(breaks.behind());
    return best.narrowedFor(width);
  }

  private void spread() {
    boolean linked =
        sheet.shown().stream()
            .filter(Block.Text.class::isInstance)
            .flatMap(block -> ((Block.Text) block).lines().stream())
            .anyMatch(line -> line.link().isPresent());
    grid.textColumns = columnsFor(linked ? LINKED_TEXT_POINTS : TEXT_POINTS);
    if (sheet.largePrint() && grid.lastPrintedColumn > 1) { // no column for words alone
      grid.textColumns = Math.min(grid.textColumns, grid.lastPrintedColumn);
    }
    int last = grid.textColumns;
    if (linked) {
      double text = grid.pointsAcross(grid.textColumns);
      grid.linkColumns = columnsFor(text + LINK_POINTS);
      last = grid.linkColumns;
    }
    boolean drawn =
        sheet.shown().stream()
            .anyMatch(block -> block instanceof Chart || block instanceof Drawing);
    if (drawn) {
      last = Math.max(last, columnsFor(Layout.DRAWN_WIDTH_POINTS));
    }
    grid.lastPrintedColumn = Math.max(grid.lastPrintedColumn, last);
    grid.sideColumn = grid.lastPrintedColumn + 2;
  }

  /**
   * Returns whether a table has the most columns, or, where there is room, nearly as many rows as
   * the longest.
   */
  private static boolean leads(SheetTable<?> table, Collection<SheetTable<?>> all) {
    int columns = all.stream().mapToInt(one -> one.columns().size()).max().orElse(0);
    int rows = all.stream().mapToInt(one -> one.table().rows().size()).max().orElse(0);
    return table.columns().size() == columns
        || columns < CROWDED_COLUMNS && table.table().rows().size() >= LONG_SHARE * rows;
  }

  /**
   * The headings of a table stay in view where they are those of most of the sheet's rows, and are
   * repeated on each page where no other is printed; over other tables they would mislead. A table
   * of many screens keeps them in view whatever follows it. Where so much stands above them that
   * little of the screen would be left, the answer alone stays in view.
   */
  private void keepInView(Table<?> table, int heading) {
    if (heading == 0 || grid.headingRow > 0 || grid.rowsInView > 1 || grid.exactSize) {
      return;
    }
    boolean ofMost = isOfMostRows(table, sheet.shown());
    if (!ofMost && table.rows().size() < MANY_SCREENS) {
      return;
    }
    double above = grid.pointsDown(1, heading) * grid.print;
    grid.headingRow = ofMost && isAlonePrinted(table) ? heading : 0;
    grid.rowsInView = above <= MOST_POINTS_IN_VIEW ? heading : 1;
  }

  /** Over other tables on later pages its headings would mislead, or stand twice. */
  private boolean isAlonePrinted(Table<?> table) {
    List<String> headings = headings(table);
    return sheet.shown().stream()
        .takeWhile(block -> !(block instanceof Block.EndOfPrint))
        .allMatch(
            block ->
                !(block instanceof Block.NewPage)
                    && (!(block instanceof Block.Rows other)
                        || startsAlike(headings, headings(other.table()))));
  }

  private static boolean isOfMostRows(Table<?> table, List<Block> blocks) {
    List<String> headings = headings(table);
    int all = 0;
    int under = 0;
    for (Block block : blocks) {
      int rows = Layout.rowsOf(block);
      all += rows;
      if (block instanceof Block.Rows other && startsAlike(headings, headings(other.table()))) {
        under += rows;
      }
    }
    return under >= LONG_SHARE * all;
  }

  private static List<String> headings(Table<?> table) {
    return table.columns().stream().filter(Column::inSheet).map(Column::heading).toList();
  }

  private static boolean startsAlike(List<String> one, List<String> other) {
    int shared = Math.min(one.size(), other.size());
    return one.subList(0, shared).equals(other.subList(0, shared));
  }

  private int columnsFor(double points) {
    int columns = 1;
    while (grid.pointsAcross(columns) < points) {
      columns++;
    }
    return columns;
  }
}
