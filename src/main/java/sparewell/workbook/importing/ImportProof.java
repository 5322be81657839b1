package sparewell.workbook.importing;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.FormulaCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.value.Words;

/** Verifies a written workbook: old cells unchanged, new ones as planned. */
public final class ImportProof {
  private ImportProof() {}

  /** Returns whether the written workbook differs from the one before by the planned rows alone. */
  public static boolean holds(WorkbookPackage before, WorkbookPackage written, NewRows added)
      throws WorkbookRefused {
    Optional<SheetEntry> sheet =
        written.sheets().stream().filter(s -> s.name().equals(added.sheet().name())).findFirst();
    if (sheet.isEmpty()) {
      return false;
    }
    Map<Integer, Map<Integer, String>> wanted = rows(before, added.sheet());
    int number = added.firstNew();
    for (List<NewCell> row : added.rows()) {
      Map<Integer, String> cells = wanted.computeIfAbsent(number++, n -> new TreeMap<>());
      row.forEach(cell -> cells.put(cell.column(), shown(NewRow.raw(cell))));
    }
    return wanted.equals(rows(written, sheet.get())) && formulasHold(written, sheet.get(), added);
  }

  private static boolean formulasHold(WorkbookPackage written, SheetEntry sheet, NewRows added)
      throws WorkbookRefused {
    FormulaCells cells =
        FormulaCells.read(written, sheet, row -> row >= added.firstNew() && row <= added.lastNew());
    int number = added.firstNew();
    for (List<NewCell> row : added.rows()) {
      Map<Integer, String> there = cells.of(number++);
      for (NewCell cell : row) {
        if (cell.kind() == NewCell.Kind.FORMULA && !cell.text().equals(there.get(cell.column()))) {
          return false;
        }
      }
    }
    return true;
  }

  /** What each cell shows, by row and column. */
  private static Map<Integer, Map<Integer, String>> rows(WorkbookPackage book, SheetEntry sheet)
      throws WorkbookRefused {
    Map<Integer, Map<Integer, String>> rows = new TreeMap<>();
    BookCells.of(book)
        .rows(
            sheet,
            row -> {
              Map<Integer, String> texts = new TreeMap<>();
              row.cells().forEach(cell -> texts.put(cell.column(), shown(cell)));
              rows.put(row.number(), texts);
            });
    return rows;
  }

  private static String shown(RawCell cell) {
    boolean measured = cell.kind() == RawCell.Kind.NUMBER;
    return measured ? String.valueOf(cell.number()) : Words.text(cell);
  }
}
