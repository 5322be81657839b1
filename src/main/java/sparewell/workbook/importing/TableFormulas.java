package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;

/**
 * Columns of the spreadsheet's tables that a formula fills. Only the spreadsheet program goes on
 * with them, so the angler is told.
 *
 * @see "ECMA-376 part 1, section 18.5.1.1 (calculatedColumnFormula)"
 */
final class TableFormulas {
  private TableFormulas() {}

  /** Says which columns stay blank in new rows of a sheet; absent where none does. */
  static Optional<String> blank(WorkbookPackage book, TargetTable target) throws WorkbookRefused {
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
    return columns.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Formulas are not filled in: "
                + String.join(", ", columns)
                + " stays blank in the new rows. Copy the formula down from the row above.");
  }
}
