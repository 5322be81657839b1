package sparewell.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.OwnSheetNames;
import sparewell.season.ItemId;
import sparewell.sheet.AfterTripSheet;
import sparewell.sheet.EntryTable;
import sparewell.sheet.LastRun;
import sparewell.sheet.LossRatesSheet;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.SparesSheet;
import sparewell.sheet.Ticks;
import sparewell.sheet.TripCardSheet;
import sparewell.sheet.Typed;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/** Reads our own sheets as they stand; a copy of one is the angler's, and is not read. */
final class OwnSheetReader {
  private OwnSheetReader() {}

  /** Reads what the angler typed into them. */
  static Typed typed(WorkbookPackage book) throws WorkbookRefused {
    BookCells cells = BookCells.of(book);
    List<Typed.Row> lines = new ArrayList<>();
    List<Typed.Stray> strays = new ArrayList<>();
    Map<String, Object> fields = new LinkedHashMap<>();
    List<List<String>> carded = new ArrayList<>();
    for (SheetEntry sheet : book.sheets()) {
      Optional<String> name =
          sheet.own() ? OwnSheetNames.wanted(sheet.name(), ReportSheets.names()) : Optional.empty();
      List<EntryTable> tables = name.map(EntryTable::of).orElse(List.of());
      if (!tables.isEmpty()) {
        List<RawRow> rows = new ArrayList<>();
        cells.rows(sheet, rows::add);
        TypedLines typed = TypedLines.of(sheet.name(), tables, rows);
        lines.addAll(typed.lines());
        strays.addAll(typed.strays());
        if (name.get().equals(TripCardSheet.NAME)) {
          rows.forEach(row -> field(row, fields));
          carded.addAll(typed.keys(EntryTable.CARD_ITEMS));
        }
      }
    }
    return new Typed(lines, fields, carded, strays, Map.of());
  }

  /** A label stands first in its row, what was typed behind it. */
  private static void field(RawRow row, Map<String, Object> fields) {
    List<Object> there =
        row.cells().stream()
            .flatMap(cell -> TypedLines.value(row, cell.column()).stream())
            .limit(2)
            .toList();
    if (there.size() == 2 && TripCardSheet.FIELDS.contains(there.get(0).toString())) {
      fields.putIfAbsent(there.get(0).toString(), there.get(1));
    }
  }

  /** Figures of the last run; absent where the workbook has no front page of ours. */
  static Optional<LastRun> lastRun(WorkbookPackage book) throws WorkbookRefused {
    Optional<SheetEntry> front = own(book, AfterTripSheet.NAME);
    if (front.isEmpty()) {
      return Optional.empty();
    }
    BookCells cells = BookCells.of(book);
    Map<String, String> figures = new LinkedHashMap<>();
    read(book, cells, AfterTripSheet.NAME, List.of(AfterTripSheet.FIGURE, AfterTripSheet.NOW))
        .forEach(row -> figures.putIfAbsent(text(row, 0), text(row, 1)));
    Map<ItemId, Integer> carries = new LinkedHashMap<>();
    Map<ItemId, Double> runOuts = new LinkedHashMap<>();
    for (List<Optional<Object>> row : read(book, cells, SparesSheet.NAME, SparesSheet.OF_ITEM)) {
      ItemId item = new ItemId(text(row, 0), text(row, 1), text(row, 2));
      number(row, 3).ifPresent(pieces -> carries.putIfAbsent(item, (int) Math.rint(pieces)));
      number(row, 4).ifPresent(chance -> runOuts.putIfAbsent(item, chance));
    }
    Map<String, Integer> lost = new LinkedHashMap<>();
    read(book, cells, LossRatesSheet.NAME, LossRatesSheet.OF_STYLE)
        .forEach(
            row ->
                number(row, 1).ifPresent(n -> lost.putIfAbsent(text(row, 0), (int) Math.rint(n))));
    return Optional.of(new LastRun(figures, carries, runOuts, lost));
  }

  private static String text(List<Optional<Object>> row, int at) {
    return row.get(at).map(Ticks::plain).orElse("");
  }

  private static Optional<Double> number(List<Optional<Object>> row, int at) {
    return row.get(at).filter(Double.class::isInstance).map(Double.class::cast);
  }

  /** The lines under these headings on our sheet, up to the end of their table. */
  private static List<List<Optional<Object>>> read(
      WorkbookPackage book, BookCells cells, String sheet, List<String> headings)
      throws WorkbookRefused {
    List<RawRow> rows = new ArrayList<>();
    Optional<SheetEntry> own = own(book, sheet);
    if (own.isPresent()) {
      cells.rows(own.get(), rows::add);
    }
    List<List<Optional<Object>>> found = new ArrayList<>();
    List<Integer> columns = List.of();
    int nextRow = -1;
    for (RawRow row : rows) {
      List<Integer> here = headings.stream().map(heading -> column(row, heading)).toList();
      if (!here.contains(0)) {
        columns = here;
        nextRow = row.number() + 1;
      } else if (row.number() == nextRow && row.at(columns.get(0)).isPresent()) {
        found.add(columns.stream().map(column -> TypedLines.value(row, column)).toList());
        nextRow++;
      }
    }
    return found;
  }

  private static int column(RawRow row, String heading) {
    return row.cells().stream()
        .filter(cell -> cell.text().equals(heading))
        .mapToInt(RawCell::column)
        .findFirst()
        .orElse(0);
  }

  private static Optional<SheetEntry> own(WorkbookPackage book, String name) {
    return book.sheets().stream()
        .filter(SheetEntry::own)
        .filter(sheet -> OwnSheetNames.wanted(sheet.name(), List.of(name)).isPresent())
        .findFirst();
  }
}
