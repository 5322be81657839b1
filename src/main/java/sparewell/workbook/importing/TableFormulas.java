package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.List;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;

/**
 * What the angler is told about columns of formulas: those that go on in new rows, and those that
 * only the spreadsheet program can go on with.
 *
 * @see "ECMA-376 part 1, section 18.5.1.1 (calculatedColumnFormula)"
 */
final class TableFormulas {
  private TableFormulas() {}

  /** Says what becomes of columns of formulas in new rows of a sheet. */
  static List<String> said(WorkbookPackage book, TargetTable target, FormulaColumns own)
      throws WorkbookRefused {
    List<String> said = new ArrayList<>();
    List<String> filled = own.copied().stream().map(CopiedFormula::heading).toList();
    if (!filled.isEmpty()) {
      said.add("Formulas go on in the new rows: " + String.join(", ", filled) + ".");
    }
    List<String> blank = new ArrayList<>(own.blank());
    for (String column : calculated(book, target)) {
      if (!filled.contains(column) && !blank.contains(column)) {
        blank.add(column);
      }
    }
    if (!blank.isEmpty()) {
      said.add(
          "Formulas are not filled in: "
              + String.join(", ", blank)
              + (blank.size() == 1 ? " stays" : " stay")
              + " blank in the new rows. Copy the formula down from the row above and see that its ranges"
              + " reach the new rows.");
    }
    return said;
  }

  /** Columns that the spreadsheet's own table fills, the declared ones left out. */
  private static List<String> calculated(WorkbookPackage book, TargetTable target)
      throws WorkbookRefused {
    List<String> columns = new ArrayList<>();
    for (Relationship r : book.relationships(target.entry().partName().orElseThrow())) {
      if (r.is("table") && !r.external() && book.has(r.part())) {
        XmlElement table = book.xml(r.part()).root();
        for (XmlElement column :
            table.child("tableColumns").map(c -> c.children("tableColumn")).orElse(List.of())) {
          String name = column.value("name").orElse("");
          if (column.child("calculatedColumnFormula").isPresent()
              && target.column(name).isEmpty()) {
            columns.add(name);
          }
        }
      }
    }
    return columns;
  }
}
