package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.workbook.grid.FormulaCells;
import sparewell.workbook.grid.FormulaText;
import sparewell.workbook.grid.RawRow;

/**
 * Columns of formulas beside the data. A column is copied down into new rows if its heading joins
 * the table without a gap, its formula is the same in the last two rows but for the row, and no
 * fixed range in it ends at the last row. Others stay blank, since their continuation is not
 * certain.
 *
 * @param copied formulas to copy down
 * @param blank headings of the other columns
 * @see "ECMA-376 part 1, section 18.5.1.1 (calculatedColumnFormula)"
 */
record FormulaColumns(List<CopiedFormula> copied, List<String> blank) {
  /**
   * A formula of the angler's that is copied down into new rows.
   *
   * @param column counted from 1
   * @param text the formula there, as the file holds it
   * @param taken rows below whose cell is not empty, and stays as it is
   */
  record CopiedFormula(int column, String heading, int row, String text, Set<Integer> taken) {

    /** Formula of a row below; absent where the cell is taken or a reference leaves the sheet. */
    Optional<String> at(int below) {
      return taken.contains(below) ? Optional.empty() : FormulaText.moved(text, below - row, 0);
    }
  }

  /** Finds the columns, for that many rows at the most. */
  static FormulaColumns of(WorkbookPackage book, TargetTable target, int rows)
      throws WorkbookRefused {
    List<RawRow> data = target.rows();
    if (data.isEmpty()) {
      return new FormulaColumns(List.of(), List.of());
    }
    int last = data.get(data.size() - 1).number();
    int before = data.size() > 1 ? data.get(data.size() - 2).number() : 0;
    int firstNew = target.lastRow() + 1;
    FormulaCells cells =
        FormulaCells.read(
            book,
            target.entry(),
            row -> row == last || row == before || row >= firstNew && row < firstNew + rows);
    List<CopiedFormula> copied = new ArrayList<>();
    List<String> blank = new ArrayList<>();
    for (Map.Entry<Integer, String> formula : cells.of(last).entrySet()) {
      int column = formula.getKey();
      Optional<String> heading = target.ownHeading(column);
      if (heading.isEmpty()) {
        continue;
      }
      boolean same =
          Optional.ofNullable(cells.of(before).get(column))
              .flatMap(above -> FormulaText.moved(above, last - before, 0))
              .filter(formula.getValue()::equals)
              .filter(text -> !endsAt(text, last))
              .isPresent();
      if (same) {
        Set<Integer> taken =
            IntStream.range(firstNew, firstNew + rows)
                .filter(row -> cells.filled(row, column))
                .boxed()
                .collect(Collectors.toSet());
        copied.add(new CopiedFormula(column, heading.get(), last, formula.getValue(), taken));
      } else {
        blank.add(heading.get());
      }
    }
    for (int column : cells.unclear(last)) {
      target.ownHeading(column).ifPresent(blank::add);
    }
    return new FormulaColumns(copied, blank);
  }

  /** Returns whether a fixed range ends at a row: copied, it would miss the rows added. */
  private static boolean endsAt(String formula, int row) {
    return Pattern.compile(":\\$?[A-Za-z]{1,3}\\$" + row + "(?!\\d)").matcher(formula).find();
  }

  /** Sentences on the formulas of new rows: those copied down, and those left to the angler. */
  List<String> notes(WorkbookPackage book, TargetTable target) throws WorkbookRefused {
    List<String> notes = new ArrayList<>();
    List<String> filled = copied.stream().map(CopiedFormula::heading).toList();
    if (!filled.isEmpty()) {
      notes.add("Formulas go on in the new rows: " + String.join(", ", filled) + ".");
    }
    Set<String> left = new LinkedHashSet<>(blank);
    left.addAll(calculated(book, target));
    left.removeAll(filled);
    if (!left.isEmpty()) {
      notes.add(
          "Formulas are not filled in: %s %s blank in the new rows. Copy the formula down from the row"
                  .formatted(String.join(", ", left), left.size() == 1 ? "stays" : "stay")
              + " above and see that its ranges reach the new rows.");
    }
    return notes;
  }

  /** Headings of undeclared columns that the spreadsheet's table fills by itself. */
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
              && target.header().column(name).isEmpty()) {
            columns.add(name);
          }
        }
      }
    }
    return columns;
  }
}
