package sparewell.posting;

import java.util.HashMap;
import java.util.Map;
import sparewell.finding.Cell;
import sparewell.workbook.InputSheet;

/**
 * A row to append.
 *
 * @param values its values by column; columns without a value are left out
 */
public record PostedRow(InputSheet sheet, Map<String, String> values, Cell from) {
  public PostedRow {
    Map<String, String> filled = new HashMap<>(values);
    filled.values().removeIf(String::isEmpty);
    values = Map.copyOf(filled);
  }
}
