package sparewell.run;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.sheet.AfterTripSheet;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/** The figures that the last run left on its front page. */
final class LastFigures {
  private LastFigures() {}

  /** Name → value as shown; absent where the workbook has no front page of ours. */
  static Optional<Map<String, String>> of(WorkbookPackage book) throws WorkbookRefused {
    Optional<SheetEntry> front =
        book.sheets().stream()
            .filter(sheet -> sheet.own() && sheet.name().startsWith(AfterTripSheet.NAME))
            .findFirst();
    if (front.isEmpty()) {
      return Optional.empty();
    }
    Table table = new Table();
    BookCells.of(book).rows(front.get(), table::take);
    return Optional.of(table.figures);
  }

  /** Takes in the rows under the headings of the table, up to its end. */
  private static final class Table {
    private final Map<String, String> figures = new LinkedHashMap<>();
    private int nextRow = -1;

    private void take(RawRow row) {
      String first = text(row, 1);
      String second = text(row, 2);
      if (first.equals(AfterTripSheet.FIGURE) && second.equals(AfterTripSheet.NOW)) {
        nextRow = row.number() + 1;
      } else if (row.number() == nextRow && !first.isEmpty()) {
        figures.put(first, second);
        nextRow++;
      }
    }

    private static String text(RawRow row, int column) {
      return row.at(column).map(RawCell::text).orElse("");
    }
  }
}
