package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import sparewell.table.Layout;

/** Breaks pages before what is drawn, small tables and heads of tables, which would be split. */
final class PageBreaks {
  /** Share of a page that is counted on; rounding takes the rest. */
  private static final double SAFE_SHARE = 0.97;

  /** A table of at most such a share of a page is kept whole. */
  private static final double SMALL_SHARE = 0.5;

  /** A page that ends with less of it used looks torn off. */
  private static final double BARE_SHARE = 0.4;

  /** Doubt about where a page ends by itself: fonts decide how far a sheet is shrunk. */
  private static final double UNSURE_SHARE = 0.2;

  /** Title, headings and a few rows. */
  private static final int HEAD_ROWS = 6;

  private PageBreaks() {}

  /**
   * Breaks of pages.
   *
   * @param behind rows behind which a page ends; those that end by themselves are not among them
   * @param split tables that go on on a further page without their headings or may be split, and
   *     pages left mostly bare
   */
  record Breaks(List<Integer> behind, int pages, int split) {}

  static Breaks of(Grid grid, Page page) {
    return of(grid, page, SMALL_SHARE);
  }

  /** Finds the breaks where every table that fits a page is kept whole, which may cost pages. */
  static Breaks keepingWhole(Grid grid, Page page) {
    return of(grid, page, 1);
  }

  private static Breaks of(Grid grid, Page page, double smallShare) {
    List<Integer> firstRows = new ArrayList<>();
    List<Integer> behind = new ArrayList<>();
    int pages = 1;
    int bare = 0;
    double room = page.innerPoints() / grid.print * SAFE_SHARE;
    double slack = page.innerPoints() / grid.print - room;
    double used = 0;
    boolean ranOver = false;
    for (int row = 1; row <= grid.lastPrintedRow; row++) {
      double height = grid.height(row);
      double needed =
          Math.max(
              height, Math.max(drawnPoints(grid, row), tablePoints(grid, row, room, smallShare)));
      if (grid.pageStarts.contains(row)) {
        behind.add(row - 1);
        pages++;
        used = repeated(grid, row);
        ranOver = false;
      }
      boolean full = used > repeated(grid, row) && used + needed > room;
      // Just behind a page that ran over by itself, a row may still stand at the foot of that page.
      if (needed > height && (full || ranOver && used <= slack)) {
        behind.add(row - 1);
        bare += full && used < room * BARE_SHARE ? 1 : 0;
        pages += ranOver && !full ? 0 : 1;
        used = repeated(grid, row);
        ranOver = false;
      } else if (full) {
        used = repeated(grid, row);
        ranOver = true;
        pages++;
        firstRows.add(row);
      } else if (needed > height && ranOver && used <= room * UNSURE_SHARE) {
        bare++; // a page that holds a few rows more would split what begins here
      }
      used += height;
    }
    return new Breaks(behind, pages, split(grid, firstRows) + bare);
  }

  private static double repeated(Grid grid, int row) {
    return grid.headingRow > 0 && row > grid.headingRow ? grid.height(grid.headingRow) : 0;
  }

  private static int split(Grid grid, List<Integer> firstRows) {
    if (grid.headingRow > 0) {
      return 0;
    }
    return (int)
        grid.together.entrySet().stream()
            .filter(
                table ->
                    firstRows.stream()
                        .anyMatch(row -> row > table.getKey() && row <= table.getValue()))
            .count();
  }

  /** Height of a table that begins in a row, or of its head where the whole is long. */
  private static double tablePoints(Grid grid, int row, double room, double smallShare) {
    Integer last = grid.together.get(row);
    if (last == null) {
      return 0;
    }
    int end = Math.min(last, grid.lastPrintedRow);
    double whole = grid.pointsDown(row, end);
    int headRows = Math.min(end, row + HEAD_ROWS - 1);
    return whole <= room * smallShare ? whole : grid.pointsDown(row, headRows);
  }

  /** Height of what is drawn from a row on, with its title and the line of text under it. */
  private static double drawnPoints(Grid grid, int row) {
    if (grid.titlesOfDrawn.contains(row)) {
      return grid.height(row) + drawnPoints(grid, row + 1);
    }
    double highest = 0;
    for (Grid.Drawn drawn : grid.drawn) {
      if (drawn.row() == row) {
        highest = Math.max(highest, drawn.height() / grid.print / Measure.EMU_PER_POINT);
      }
    }
    return highest == 0 ? 0 : highest + 2 * Layout.ROW_POINTS;
  }
}
