package sparewell.render;

import java.util.List;
import sparewell.table.Block;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Lays out one sheet: the answer on top, then its blocks below each other. */
final class SheetPage {
  private static final double TEXT_POINTS = 520;

  /** Headings stay in view only where enough of the screen is left below them. */
  private static final double MOST_POINTS_IN_VIEW = 170;

  private SheetPage() {}

  /** A sheet ready to be written. */
  record Laid(Grid grid, Page page) {}

  static Laid lay(
      ReportSheet sheet,
      Looks looks,
      SheetRenderer.TableNames names,
      UnitSystem units,
      RenderOptions options) {
    Grid grid = new Grid(options.actualName(sheet.name()), looks);
    List<Block> blocks = sheet.blocks();
    for (Block block : blocks) {
      if (block instanceof Block.Rows rows) {
        TableBlock.widen(rows.table(), grid, units, options);
      }
    }
    grid.textColumns = columnsFor(TEXT_POINTS, grid);
    grid.lastPrintedColumn = Math.max(grid.lastPrintedColumn, grid.textColumns);
    TextBlock.put(sheet.answer(), grid, 1, Look.ANSWER);
    int row = Layout.FIRST_ROW;
    for (Block block : blocks) {
      if (block instanceof Block.Text text) {
        TextBlock.lay(text, grid, row, options);
      } else if (block instanceof Block.Rows rows) {
        int heading =
            TableBlock.lay(
                rows.table(), grid, row, names.next(about(sheet, rows.table())), units, options);
        keepInView(rows.table(), grid, heading, blocks);
      }
      row += Layout.rowsOf(block) + 1;
    }
    grid.lastPrintedRow = Math.max(1, row - 2);
    return new Laid(grid, Page.fitting(points(grid, grid.lastPrintedColumn), units));
  }

  /** The headings of the longest table stay in view where they stand near the top. */
  private static void keepInView(Table<?> table, Grid grid, int heading, List<Block> blocks) {
    if (heading == 0 || grid.headingRow > 0) {
      return;
    }
    for (Block block : blocks) {
      if (block instanceof Block.Rows rows && rows.table().rows().size() > table.rows().size()) {
        return;
      }
    }
    double above = 0;
    for (int row = 1; row <= heading; row++) {
      above += grid.heights.getOrDefault(row, Measure.DEFAULT_ROW_POINTS);
    }
    grid.headingRow = heading;
    grid.staysInView = above <= MOST_POINTS_IN_VIEW;
  }

  private static String about(ReportSheet sheet, Table<?> table) {
    return table.csvFile().isEmpty() ? sheet.name() : table.csvFile().replace(".csv", "");
  }

  /** The least number of columns from the first on that are so wide together. */
  static int columnsFor(double points, Grid grid) {
    int columns = 1;
    while (points(grid, columns) < points) {
      columns++;
    }
    return columns;
  }

  private static double points(Grid grid, int columns) {
    double points = 0;
    for (int column = 1; column <= columns; column++) {
      points += grid.width(column) * Measure.POINTS_PER_CHARACTER;
    }
    return points;
  }
}
