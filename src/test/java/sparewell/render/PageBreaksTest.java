package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.units.UnitSystem;

class PageBreaksTest {
  private static final Page PAGE = Page.fitting(500, UnitSystem.US).scaled(100);

  /** Rows of the usual height that a page takes. */
  private static final int ROWS = (int) (PAGE.innerPoints() * 0.97 / 15);

  private static Grid grid(int firstRow, int lastRow) {
    Grid grid = new Grid("Sheet", new Looks(null), 1, 1);
    grid.together.put(firstRow, lastRow);
    grid.lastPrintedRow = lastRow;
    return grid;
  }

  @Test
  void aSmallTableIsKeptWhole() {
    int first = ROWS - 3;
    PageBreaks.Breaks breaks = PageBreaks.of(grid(first, first + 9), PAGE);
    assertEquals(new PageBreaks.Breaks(List.of(first - 1), 2, 0), breaks);
  }

  /** As for a table whose last four rows, its sums among them, stand together. */
  @Test
  void sumsAreNotLeftAlone() {
    Grid grid = grid(11, ROWS + 1);
    grid.together.put(ROWS - 2, ROWS + 1);
    assertEquals(List.of(ROWS - 3), PageBreaks.of(grid, PAGE).behind());
  }

  @Test
  void theHeadOfALongTableIsNotLeftAtTheFootOfAPage() {
    int first = ROWS - 3;
    PageBreaks.Breaks breaks = PageBreaks.of(grid(first, first + 3 * ROWS), PAGE);
    assertEquals(List.of(first - 1), breaks.behind());
  }

  @Test
  void aTableThatGoesOnWithoutItsHeadingsIsCounted() {
    Grid grid = grid(11, ROWS + 5);
    assertEquals(new PageBreaks.Breaks(List.of(), 2, 1), PageBreaks.of(grid, PAGE));
    grid.headingRow = 12;
    assertEquals(new PageBreaks.Breaks(List.of(), 2, 0), PageBreaks.of(grid, PAGE));
  }

  @Test
  void whatAsksForAPageOfItsOwnGetsIt() {
    Grid grid = grid(11, 14);
    grid.pageStarts.add(8);
    assertEquals(new PageBreaks.Breaks(List.of(7), 2, 0), PageBreaks.of(grid, PAGE));
  }

  @Test
  void aTableOfAWholePageCanBeKeptWhole() {
    PageBreaks.Breaks breaks = PageBreaks.keepingWhole(grid(31, ROWS + 5), PAGE);
    assertEquals(new PageBreaks.Breaks(List.of(30), 2, 0), breaks);
  }

  @Test
  void aPageLeftMostlyBareIsCounted() {
    PageBreaks.Breaks breaks = PageBreaks.keepingWhole(grid(6, ROWS + 3), PAGE);
    assertEquals(new PageBreaks.Breaks(List.of(5), 2, 1), breaks);
  }

  @Test
  void repeatedHeadingsTakeRoomOnEveryFurtherPage() {
    Grid grid = grid(1, 3 * ROWS);
    assertEquals(3, PageBreaks.of(grid, PAGE).pages());
    grid.headingRow = 2;
    assertEquals(4, PageBreaks.of(grid, PAGE).pages());
  }

  /** In other fonts a page holds up to a sixth more: the next table's head would be split. */
  @Test
  void aTableSoonAfterAPageRanOverIsCounted() {
    Grid grid = grid(1, ROWS + 5);
    int next = ROWS + 7;
    grid.together.put(next, next + 9);
    grid.lastPrintedRow = next + 9;
    assertEquals(2, PageBreaks.of(grid, PAGE).split());
  }

  @Test
  void whatIsNotPrintedTakesNoRoom() {
    Grid grid = grid(1, 3);
    grid.together.put(ROWS - 1, ROWS + 8); // a text with the rows that it leads to
    grid.lastPrintedRow = ROWS;
    assertEquals(new PageBreaks.Breaks(List.of(), 1, 0), PageBreaks.of(grid, PAGE));
  }

  @Test
  void aTitleGoesToTheNextPageWithWhatIsDrawnUnderIt() {
    Grid grid = grid(1, ROWS - 6);
    int title = ROWS - 4;
    long high = 200L * Measure.EMU_PER_POINT;
    grid.titlesOfDrawn.add(title);
    grid.drawn.add(new Grid.Drawn(title + 1, 0, high, high, Optional.empty(), anchor -> ""));
    grid.lastPrintedRow = title + 16;
    assertEquals(List.of(title - 1), PageBreaks.of(grid, PAGE).behind());
  }
}
