package sparewell.table;

import java.util.List;

/**
 * An output sheet.
 *
 * @param name its tab
 * @param answer the line on top that says what the sheet answers
 * @param blocks its parts, from the top
 */
public record ReportSheet(String name, String answer, List<Block> blocks) {
  public ReportSheet {
    blocks = List.copyOf(blocks);
  }
}
