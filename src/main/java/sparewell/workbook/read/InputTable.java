package sparewell.workbook.read;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.RawRow;

/**
 * The rows of an input sheet below its header, only cells of declared columns in them.
 *
 * @param sheet what was declared
 * @param name the sheet's name as the workbook spells it
 * @param columns the columns found, by declared name
 * @param rows rows that hold anything
 */
record InputTable(
    InputSheet sheet, String name, Map<String, BoundColumn> columns, List<RawRow> rows) {
  InputTable {
    rows = List.copyOf(rows);
  }

  /** Where each column found stands, counted from 1. */
  Map<String, Integer> columnNumbers() {
    Map<String, Integer> numbers = new HashMap<>();
    columns.forEach((declared, bound) -> numbers.put(declared, bound.index()));
    return numbers;
  }

  Optional<BoundColumn> column(String columnName) {
    return Optional.ofNullable(columns.get(columnName));
  }
}
