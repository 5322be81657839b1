package sparewell.posting;

import java.util.List;
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
}
