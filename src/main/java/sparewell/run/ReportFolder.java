package sparewell.run;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import sparewell.render.CsvRenderer;
import sparewell.table.Block;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** The folder of CSV files of one workbook. */
final class ReportFolder {
  private ReportFolder() {}

  /** Makes the folder; fails where nothing can be written into it. */
  static void prepare(Path folder) throws IOException {
    Files.createDirectories(folder);
    if (!Files.isWritable(folder)) {
      throw new AccessDeniedException(folder.toString());
    }
  }

  /** The text of every table that has a file, by the file's name. */
  static Map<String, String> texts(List<ReportSheet> sheets, UnitSystem units) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (ReportSheet sheet : sheets) {
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Rows rows && !rows.table().csvFile().isEmpty()) {
          texts.put(rows.table().csvFile(), CsvRenderer.text(rows.table(), units));
        }
      }
    }
    return texts;
  }

  /**
   * Writes the files in UTF-8 without byte order mark, and takes away CSV files that this run did
   * not write, so that the folder holds one run and no other. Files that are not CSV stay.
   *
   * @param texts by file name
   */
  static void write(Path folder, Map<String, String> texts) throws IOException {
    prepare(folder);
    Set<Path> written = new HashSet<>();
    for (Map.Entry<String, String> text : texts.entrySet()) {
      Path file = folder.resolve(text.getKey());
      Files.writeString(file, text.getValue());
      written.add(file);
    }
    try (Stream<Path> inside = Files.list(folder)) {
      for (Path file : inside.toList()) {
        if (file.toString().endsWith(".csv") && !written.contains(file)) {
          Files.delete(file);
        }
      }
    }
  }
}
