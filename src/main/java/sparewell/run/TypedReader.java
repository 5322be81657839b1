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
import sparewell.sheet.EntryTable;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.TripCardSheet;
import sparewell.sheet.Typed;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawRow;

/** Reads what the angler typed into our own sheets; a copy of one is his, and is not read. */
final class TypedReader {
  private TypedReader() {}

  static Typed of(WorkbookPackage book) throws WorkbookRefused {
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
}
