package sparewell.table;

import java.util.Optional;
import sparewell.finding.Cell;

/**
 * Rows in which the parts of a sheet stand, so that lines elsewhere can lead there.
 *
 * <p>Row 1 holds the answer, row 2 is blank; each block is followed by a blank row. A table has one
 * row for its title if it has one, one for its headings, its rows, and one for its sums.
 */
public final class Layout {
  public static final int FIRST_ROW = 3;

  /** Height of a row where nothing makes it higher, in points. */
  public static final double ROW_POINTS = 15;

  /** Width of charts and of drawings that are not too high, in points. */
  public static final double DRAWN_WIDTH_POINTS = 540;

  private static final int HIGHEST_DRAWING_ROWS = 40;

  private Layout() {}

  /** Height in points at which a drawing is drawn; its width follows from its ratio. */
  public static double heightPoints(Drawing drawing) {
    return Math.min(
        DRAWN_WIDTH_POINTS / drawing.widthToHeightRatio(), HIGHEST_DRAWING_ROWS * ROW_POINTS);
  }

  public static int coveredRows(Drawing drawing) {
    return (int) Math.ceil(heightPoints(drawing) / ROW_POINTS);
  }

  /** Rows that a block covers, the blank row after it not counted; not for a {@link LabelGrid}. */
  public static int rowsOf(Block block) {
    if (block instanceof Block.NewPage || block instanceof Block.EndOfPrint) {
      return 0;
    }
    if (block instanceof Block.Text text) {
      return text.lines().size();
    }
    if (block instanceof Block.Form form) {
      return form.fields().size();
    }
    if (block instanceof Block.Rows rows) {
      Table<?> table = rows.table();
      if (table.rows().isEmpty()) {
        return headingRow(table) + 1;
      }
      return headingRow(table) + 1 + table.rows().size() + (hasSums(table) ? 1 : 0);
    }
    if (block instanceof Chart chart) {
      return chart.coveredRows() + 1;
    }
    if (block instanceof Drawing drawing) {
      return (drawing.title().isEmpty() ? 0 : 1) + coveredRows(drawing);
    }
    throw new IllegalArgumentException("rows are known only once drawn: " + block.getClass());
  }

  /** Rows of a block that are printed, as those of {@link #rowsOf}. */
  public static int printedRowsOf(Block block) {
    return block instanceof Block.Rows rows && rows.printed() < rows.table().rows().size()
        ? headingRow(rows.table()) + 1 + rows.printed()
        : rowsOf(block);
  }

  public static boolean hasSums(Table<?> table) {
    return table.columns().stream().anyMatch(column -> column.inSheet() && column.totalled());
  }

  /**
   * First cell of a table's row in a sheet, under the sheet's declared name; absent where the table
   * is not in the sheet or stands behind labels.
   */
  public static Optional<Cell> cellOf(ReportSheet sheet, Table<?> table, int index) {
    int row = FIRST_ROW;
    for (Block block : sheet.shown()) {
      if (block instanceof Block.Rows rows && rows.table() == table) {
        return Optional.of(new Cell(sheet.name(), row + headingRow(table) + 1 + index, 1));
      }
      if (block instanceof LabelGrid) {
        return Optional.empty();
      }
      row += rowsOf(block) + 1;
    }
    return Optional.empty();
  }

  private static int headingRow(Table<?> table) {
    return table.title().isEmpty() ? 0 : 1;
  }
}
