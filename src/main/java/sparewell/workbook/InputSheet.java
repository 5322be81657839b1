package sparewell.workbook;

import java.util.List;

/**
 * A sheet that the angler fills.
 *
 * @param required whether the workbook cannot be analysed without it
 * @param purpose what it is for, one sentence
 */
public record InputSheet(String name, boolean required, String purpose, List<InputColumn> columns) {
  public InputSheet {
    columns = List.copyOf(columns);
  }

  public List<String> requiredColumns() {
    return columns.stream().filter(InputColumn::required).map(InputColumn::name).toList();
  }

  public InputColumn column(String columnName) {
    return columns.stream()
        .filter(column -> column.name().equals(columnName))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(name + " has no column " + columnName));
  }
}
