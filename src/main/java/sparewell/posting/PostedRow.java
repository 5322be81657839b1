package sparewell.posting;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.workbook.InputSheet;

/**
 * A row to append.
 *
 * @param sheet the angler's sheet
 * @param values its values by column; columns without a value are left out
 * @param from the cell of ours that it comes from
 */
public record PostedRow(InputSheet sheet, Map<String, String> values, Cell from) {
  public PostedRow {
    values =
        Map.copyOf(
            values.entrySet().stream()
                .filter(value -> !value.getValue().isEmpty())
                .collect(
                    Collectors.toMap(
                        Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, TreeMap::new)));
  }
}
