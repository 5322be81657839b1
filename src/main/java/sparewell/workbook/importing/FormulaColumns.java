package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.workbook.grid.FormulaCells;
import sparewell.workbook.grid.FormulaText;
import sparewell.workbook.grid.RawRow;

/**
 * The angler's own columns of formulas beside the data, and which of them go on in new rows: those
 * with a heading that joins the table without a gap, whose formula is the same in the last two rows
 * but for the row and has no fixed range that ends at the last of them. Of any other it is not sure
 * what belongs in a new row, so it stays blank.
 *
 * @param copied those that go on
 * @param blank headings of those that do not
 */
record FormulaColumns(List<CopiedFormula> copied, List<String> blank) {
  FormulaColumns {
    copied = List.copyOf(copied);
    blank = List.copyOf(blank);
  }

  /**
   * Finds them.
   *
   * @param rows how many rows may be added
   */
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
        Set<Integer> taken = new HashSet<>();
        for (int row = firstNew; row < firstNew + rows; row++) {
          if (cells.filled(row, column)) {
            taken.add(row);
          }
        }
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

  /**
   * Returns whether a range of fixed rows ends at a row: copied below, it would miss the rows
   * added.
   */
  private static boolean endsAt(String formula, int row) {
    return Pattern.compile(":\\$?[A-Za-z]{1,3}\\$" + row + "(?!\\d)").matcher(formula).find();
  }
}
