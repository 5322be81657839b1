package sparewell.workbook.grid;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A row with at least one cell that holds something; rows are counted from 1. */
public record RawRow(int number, List<RawCell> cells) {
  private static final String EXAMPLE = "example:";

  public RawRow {
    cells = List.copyOf(cells);
  }

  /** Returns whether its first cell marks it as a template's example, which is never read. */
  public boolean example() {
    return !cells.isEmpty()
        && cells.get(0).kind() == RawCell.Kind.TEXT
        && cells.get(0).text().strip().toLowerCase(Locale.ROOT).startsWith(EXAMPLE);
  }

  public Optional<RawCell> at(int column) {
    for (RawCell cell : cells) {
      if (cell.column() == column) {
        return Optional.of(cell);
      }
    }
    return Optional.empty();
  }
}
