package sparewell.table;

import java.util.List;
import java.util.Optional;

/**
 * An output sheet.
 *
 * @param name its tab
 * @param answer the line on top that says what the sheet answers
 * @param blocks its parts, from the top
 * @param inView the table, one of the parts, whose headings stay in view and are repeated on each
 *     page; empty for the one that most of the rows belong to. It must stand near the top: where
 *     little of the screen would be left below its headings, only the answer stays in view
 * @param largePrint whether it is read at arm's length: letters, rows and columns are larger, and
 *     all of it is on one upright page
 */
public record ReportSheet(
    String name, String answer, List<Block> blocks, Optional<Table<?>> inView, boolean largePrint) {
  public ReportSheet {
    blocks = List.copyOf(blocks);
  }

  /** A sheet as usual. */
  public ReportSheet(String name, String answer, List<Block> blocks) {
    this(name, answer, blocks, Optional.empty(), false);
  }

  /** The parts that stand on the sheet. */
  public List<Block> shown() {
    return blocks.stream().filter(block -> !(block instanceof Block.FileOnly)).toList();
  }

  /** The same with the headings of one of its tables in view. */
  public ReportSheet keepingInView(Table<?> table) {
    return new ReportSheet(name, answer, blocks, Optional.of(table), largePrint);
  }

  /** The same in large print. */
  public ReportSheet inLargePrint() {
    return new ReportSheet(name, answer, blocks, inView, true);
  }
}
