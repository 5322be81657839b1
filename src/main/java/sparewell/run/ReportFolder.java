package sparewell.run;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
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

  /**
   * Writes every table that has a file, and takes away CSV files that this run did not write, so
   * that the folder holds one run and no other. Files that are not CSV stay.
   */
  static void write(Path folder, List<ReportSheet> sheets, UnitSystem units) throws IOException {
    prepare(folder);
    Set<Path> written = new HashSet<>();
    for (ReportSheet sheet : sheets) {
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Rows rows && !rows.table().csvFile().isEmpty()) {
          Path file = folder.resolve(rows.table().csvFile());
          CsvRenderer.render(rows.table(), units, file);
          written.add(file);
        }
      }
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
