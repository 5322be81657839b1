package sparewell.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.render.CsvRenderer;
import sparewell.table.Block;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** The folder of CSV files of one workbook. */
final class ReportFolder {
  private static final int LONGEST_HEADING = 4096;

  private ReportFolder() {}

  static void prepare(Path folder) throws IOException {
    Files.createDirectories(folder);
    if (!Files.isWritable(folder)) {
      throw new AccessDeniedException(folder.toString());
    }
  }

  static Map<String, String> texts(List<ReportSheet> sheets, UnitSystem units) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (ReportSheet sheet : sheets) {
      for (Block block : sheet.blocks()) {
        table(block)
            .filter(table -> !table.csvFile().isEmpty())
            // Tables of one file go on from each other, in parts with titles of their own.
            .ifPresent(
                table ->
                    texts.merge(
                        table.csvFile(),
                        CsvRenderer.text(table, units),
                        (first, next) -> first + next.substring(next.indexOf('\n') + 1)));
      }
    }
    return texts;
  }

  private static Optional<Table<?>> table(Block block) {
    return block instanceof Block.Rows rows
        ? Optional.of(rows.table())
        : block instanceof Block.FileOnly file ? Optional.of(file.table()) : Optional.empty();
  }

  /**
   * Writes the files in UTF-8 without byte order mark and removes those of an earlier run that this
   * one did not write. Foreign files stay; where one has the name of one of ours, ours gets {@code
   * (2)}.
   *
   * @param texts by file name
   * @return messages about names that were taken
   */
  static List<String> write(Path folder, Map<String, String> texts) throws IOException {
    prepare(folder);
    Optional<WrittenFiles> before = WrittenFiles.in(folder);
    WrittenFiles now = new WrittenFiles();
    Map<Path, byte[]> contents = new LinkedHashMap<>();
    List<String> taken = new ArrayList<>();
    for (Map.Entry<String, String> text : texts.entrySet()) {
      String name = free(folder, text.getKey(), text.getValue(), before);
      if (!name.equals(text.getKey())) {
        taken.add(
            "%s was not written by this program and stays as it is; what would stand there is in '%s'."
                    .formatted(folder.resolve(text.getKey()), name)
                + " Move yours elsewhere, or give another folder with --reports.");
      }
      byte[] content = text.getValue().getBytes(StandardCharsets.UTF_8);
      now.add(name, content);
      contents.put(folder.resolve(name), content);
    }
    if (before.isPresent()) {
      before.get().removeAllBut(now, folder);
    }
    now.write(folder); // first, so that what a stopped run leaves is known as ours
    for (Map.Entry<Path, byte[]> content : contents.entrySet()) {
      Files.write(content.getKey(), content.getValue());
    }
    return taken;
  }

  /** The name, with a number where a file that is not ours has it. */
  private static String free(Path folder, String name, String text, Optional<WrittenFiles> before)
      throws IOException {
    String free = name;
    for (int n = 2; !isOurs(folder.resolve(free), text, before); n++) {
      free = name.replace(".csv", " (" + n + ").csv");
    }
    return free;
  }

  /**
   * Returns whether nothing is lost by writing there: no file or an empty one, or one that an
   * earlier run wrote. That is one on the list of the folder, if it has a list, whose first two
   * headings are those of ours (a later version may add columns behind them).
   */
  private static boolean isOurs(Path file, String text, Optional<WrittenFiles> before)
      throws IOException {
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return true;
    }
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    boolean listed = before.map(b -> b.names(file.getFileName().toString())).orElse(true);
    return listed && (Files.size(file) == 0 || headings(file).equals(headings(text)));
  }

  private static String headings(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return headings(new String(in.readNBytes(LONGEST_HEADING), StandardCharsets.UTF_8));
    }
  }

  private static String headings(String text) {
    String line = text.lines().findFirst().orElse("");
    int second = line.indexOf(',', line.indexOf(',') + 1);
    return second < 0 ? line : line.substring(0, second);
  }
}
