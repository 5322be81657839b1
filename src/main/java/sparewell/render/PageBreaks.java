package sparewell.render;

import sparewell.table.Layout;

/** Breaks pages before what is drawn and would else be split. */
final class PageBreaks {
  /** Share of a page that is counted on; rounding takes the rest. */
  private static final double SAFE_SHARE = 0.97;

  private PageBreaks() {}

  /** Sets the breaks; the rows' heights must be final. */
  static void keepWhole(Grid grid, Page page) {
    double room = page.innerPoints() * SAFE_SHARE;
    double used = 0;
    for (int row = 1; row <= grid.lastPrintedRow; row++) {
      double height = grid.heights.getOrDefault(row, Layout.ROW_POINTS);
      double needed = Math.max(height, drawnPoints(grid, row));
      if (used > 0 && used + needed > room) {
        if (needed > height) {
          grid.pageBreaks.add(row - 1);
        }
        used = 0;
      }
      used += height;
    }
  }

  /** Height of what is drawn from a row on, with the line of text under it. */
  private static double drawnPoints(Grid grid, int row) {
    double highest = 0;
    for (Grid.Drawn drawn : grid.drawn) {
      if (drawn.row() == row) {
        highest = Math.max(highest, (double) drawn.height() / Measure.EMU_PER_POINT);
      }
    }
    return highest == 0 ? 0 : highest + 2 * Layout.ROW_POINTS;
  }
}
