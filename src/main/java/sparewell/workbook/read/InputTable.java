package sparewell.workbook.read;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.workbook.grid.RawRow;

/**
 * The rows of an input sheet below its header, only cells of declared columns in them.
 *
 * @param name the sheet's name as the workbook spells it
 * @param columns the columns found, by declared name
 */
record InputTable(String name, Map<String, BoundColumn> columns, List<RawRow> rows) {

  /** Number of each column found, counted from 1, by declared name. */
  Map<String, Integer> columnNumbers() {
    Map<String, Integer> numbers = new HashMap<>();
    columns.forEach((declared, bound) -> numbers.put(declared, bound.index()));
    return numbers;
  }

  Optional<BoundColumn> column(String columnName) {
    return Optional.ofNullable(columns.get(columnName));
  }
}
