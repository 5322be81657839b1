package sparewell.table;

import java.util.List;
import java.util.Optional;
import sparewell.units.UnitSystem;

/**
 * A result table.
 *
 * @param csvFile file name of its CSV, such as {@code spares.csv}; empty where it has none
 * @param whenEmpty what the sheet says where there are no rows
 */
public record Table<R>(
    String csvFile, String title, List<Column<R>> columns, List<R> rows, String whenEmpty) {
  public static final String TOTAL = "Total";

  public Table {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /** Value of a row as its cell shows it; absent where it is not known or has no such column. */
  public Optional<Object> shown(R row, String heading, UnitSystem units) {
    return columns.stream()
        .filter(column -> column.heading().equals(heading))
        .findFirst()
        .flatMap(column -> column.format().shown(column.value().apply(row), units));
  }
}
