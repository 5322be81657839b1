package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.FormulaCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Words;

/** Verifies a written workbook: old cells unchanged, new ones as planned. */
public final class ImportProof {
  private ImportProof() {}

  /** Returns whether the written workbook differs from the one before by the planned rows alone. */
  public static boolean holds(WorkbookPackage before, WorkbookPackage written, SheetPlan plan)
      throws WorkbookRefused {
    Optional<SheetEntry> sheet =
        written.sheets().stream().filter(s -> s.name().equals(plan.sheet().name())).findFirst();
    if (sheet.isEmpty()) {
      return false;
    }
    Map<Integer, List<RawCell>> wanted = rows(before, plan.sheet());
    int number = plan.lastRow();
    for (NewRow row : plan.added()) {
      List<RawCell> cells = wanted.computeIfAbsent(++number, n -> new ArrayList<>());
      row.values().forEach(value -> cells.add(value.raw()));
      for (CopiedFormula formula : plan.copied()) {
        if (formula.at(number).isPresent()) {
          cells.add(RawCell.of(formula.column(), RawCell.Kind.UNCOMPUTED, ""));
        }
      }
    }
    return shown(wanted).equals(shown(rows(written, sheet.get())))
        && formulasHold(written, sheet.get(), plan);
  }

  private static boolean formulasHold(WorkbookPackage written, SheetEntry sheet, SheetPlan plan)
      throws WorkbookRefused {
    if (plan.copied().isEmpty()) {
      return true;
    }
    int last = plan.lastRow() + plan.added().size();
    FormulaCells cells =
        FormulaCells.read(written, sheet, row -> row > plan.lastRow() && row <= last);
    for (int row = plan.lastRow() + 1; row <= last; row++) {
      for (CopiedFormula formula : plan.copied()) {
        Optional<String> meant = formula.at(row);
        Optional<String> there = Optional.ofNullable(cells.of(row).get(formula.column()));
        if (meant.isPresent() && !meant.equals(there)) {
          return false;
        }
      }
    }
    return true;
  }

  private static Map<Integer, List<RawCell>> rows(WorkbookPackage book, SheetEntry sheet)
      throws WorkbookRefused {
    Map<Integer, List<RawCell>> rows = new TreeMap<>();
    BookCells.of(book).rows(sheet, (RawRow r) -> rows.put(r.number(), new ArrayList<>(r.cells())));
    return rows;
  }

  private static Map<Integer, Map<Integer, String>> shown(Map<Integer, List<RawCell>> rows) {
    Map<Integer, Map<Integer, String>> shown = new TreeMap<>();
    rows.forEach(
        (number, cells) -> {
          Map<Integer, String> texts = new TreeMap<>();
          cells.forEach(cell -> texts.put(cell.column(), shown(cell)));
          shown.put(number, texts);
        });
    return shown;
  }

  private static String shown(RawCell cell) {
    boolean measured = cell.kind() == RawCell.Kind.NUMBER;
    return measured ? String.valueOf(cell.number()) : Words.text(cell);
  }
}
