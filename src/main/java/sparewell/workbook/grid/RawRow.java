package sparewell.workbook.grid;

import java.util.List;
import java.util.Optional;

/**
 * A row with at least one cell that holds something.
 *
 * @param number counted from 1
 * @param cells its cells that hold something, by column
 */
public record RawRow(int number, List<RawCell> cells) {
  public RawRow {
    cells = List.copyOf(cells);
  }

  /** The cell in a column, where it holds something. */
  public Optional<RawCell> at(int column) {
    for (RawCell cell : cells) {
      if (cell.column() == column) {
        return Optional.of(cell);
      }
    }
    return Optional.empty();
  }
}
