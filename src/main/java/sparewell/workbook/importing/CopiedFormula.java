package sparewell.workbook.importing;

import java.util.Optional;
import java.util.Set;
import sparewell.workbook.grid.FormulaText;

/**
 * A formula of the angler's that is copied down into new rows.
 *
 * @param column counted from 1
 * @param text the formula there, as the file holds it
 * @param taken rows below whose cell is not empty, and stays as it is
 */
record CopiedFormula(int column, String heading, int row, String text, Set<Integer> taken) {
  CopiedFormula {
    taken = Set.copyOf(taken);
  }

  /** Formula of a row below; absent where the cell is taken or a reference leaves the sheet. */
  Optional<String> at(int below) {
    return taken.contains(below) ? Optional.empty() : FormulaText.moved(text, below - row, 0);
  }
}
