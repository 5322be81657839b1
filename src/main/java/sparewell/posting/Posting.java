package sparewell.posting;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sparewell.finding.Cell;
import sparewell.workbook.InputSheet;

/**
 * Rows that a posting adds.
 *
 * @param rows the rows, in the order in which they are appended
 * @param faults what cannot be posted, whole sentences; where there is any, nothing is
 */
public record Posting(List<PostedRow> rows, List<String> faults) {

  public List<PostedRow> of(InputSheet sheet) {
    return rows.stream().filter(row -> row.sheet() == sheet).toList();
  }

  /** A row to append: its values by column, blank ones left out. */
  public record PostedRow(InputSheet sheet, Map<String, String> values, Cell from) {
    public PostedRow {
      Map<String, String> filled = new HashMap<>(values);
      filled.values().removeIf(String::isEmpty);
      values = Map.copyOf(filled);
    }
  }
}
