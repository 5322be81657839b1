package sparewell.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.season.ItemId;
import sparewell.sheet.AfterTripSheet;
import sparewell.sheet.LastRun;
import sparewell.sheet.SparesSheet;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/** Reads what the last run left on its own sheets. */
final class LastFigures {
  private LastFigures() {}

  /** What it left; absent where the workbook has no front page of ours. */
  static Optional<LastRun> of(WorkbookPackage book) throws WorkbookRefused {
    Optional<SheetEntry> front = own(book, AfterTripSheet.NAME);
    if (front.isEmpty()) {
      return Optional.empty();
    }
    BookCells cells = BookCells.of(book);
    Rows figures = new Rows(List.of(AfterTripSheet.FIGURE, AfterTripSheet.NOW));
    cells.rows(front.get(), figures);
    Rows spares = new Rows(SparesSheet.CARRY_OF_ITEM);
    Optional<SheetEntry> sparesSheet = own(book, SparesSheet.NAME);
    if (sparesSheet.isPresent()) {
      cells.rows(sparesSheet.get(), spares);
    }
    Map<String, String> byName = new LinkedHashMap<>();
    figures.found.forEach((key, value) -> byName.put(key.get(0), value));
    Map<ItemId, Integer> carries = new LinkedHashMap<>();
    spares.found.forEach(
        (key, value) ->
            count(value)
                .ifPresent(
                    pieces -> carries.put(new ItemId(key.get(0), key.get(1), key.get(2)), pieces)));
    return Optional.of(new LastRun(byName, carries));
  }

  private static Optional<SheetEntry> own(WorkbookPackage book, String name) {
    return book.sheets().stream()
        .filter(sheet -> sheet.own() && sheet.name().startsWith(name))
        .findFirst();
  }

  private static Optional<Integer> count(String text) {
    return text.matches("\\d{1,7}(\\.0)?")
        ? Optional.of((int) Double.parseDouble(text))
        : Optional.empty();
  }

  /**
   * Takes in the rows under a table's headings, up to its end: the last heading's by the others.
   */
  private static final class Rows implements Consumer<RawRow> {
    private final List<String> headings;
    private final Map<List<String>, String> found = new LinkedHashMap<>();
    private List<Integer> columns = List.of();
    private int nextRow = -1;

    Rows(List<String> headings) {
      this.headings = headings;
    }

    @Override
    public void accept(RawRow row) {
      List<Integer> here = headings.stream().map(heading -> column(row, heading)).toList();
      if (!here.contains(0)) {
        columns = here;
        nextRow = row.number() + 1;
      } else if (row.number() == nextRow && !text(row, columns.get(0)).isEmpty()) {
        List<String> texts = columns.stream().map(column -> text(row, column)).toList();
        found.put(texts.subList(0, texts.size() - 1), texts.get(texts.size() - 1));
        nextRow++;
      }
    }

    private static int column(RawRow row, String heading) {
      return row.cells().stream()
          .filter(cell -> cell.text().equals(heading))
          .mapToInt(RawCell::column)
          .findFirst()
          .orElse(0);
    }

    private static String text(RawRow row, int column) {
      return row.at(column)
          .map(cell -> cell.text().isEmpty() ? String.valueOf(cell.number()) : cell.text())
          .filter(text -> !text.equals("0.0"))
          .orElse("");
    }
  }
}
