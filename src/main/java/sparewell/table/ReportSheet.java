package sparewell.table;

import java.util.List;

/**
 * An output sheet.
 *
 * @param answer the line on top that says what the sheet answers
 * @param blocks its parts, from the top
 * @param largePrint whether it is read at arm's length: letters, rows and columns are larger, and
 *     all of it is on one upright page
 */
public record ReportSheet(String name, String answer, List<Block> blocks, boolean largePrint) {
  public ReportSheet {
    blocks = List.copyOf(blocks);
  }

  public ReportSheet(String name, String answer, List<Block> blocks) {
    this(name, answer, blocks, false);
  }

  public List<Block> shown() {
    return blocks.stream().filter(block -> !(block instanceof Block.FileOnly)).toList();
  }
}
