package sparewell.render;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.Saving;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** Sheets rendered into a workbook that holds one sheet of its owner's, the last one. */
final class Rendered {
  static final String MINE = "Mine";

  /** By whether days count from 1904; made once, as a time stands in it. */
  private static final Map<Boolean, byte[]> OWNERS = new ConcurrentHashMap<>();

  private Rendered() {}

  private static byte[] owners(boolean date1904) {
    try (XSSFWorkbook book = new XSSFWorkbook();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      book.createSheet(MINE);
      book.getCTWorkbook().getWorkbookPr().setDate1904(date1904);
      book.write(out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The workbook. */
  static byte[] workbook(List<ReportSheet> sheets, UnitSystem units, RenderOptions options) {
    try {
      Path file = Files.createTempFile("rendered", ".xlsx");
      try {
        into(file, sheets, units, options);
        return Files.readAllBytes(file);
      } finally {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes the workbook to a file. */
  static void into(Path file, List<ReportSheet> sheets, UnitSystem units, RenderOptions options)
      throws IOException {
    Path mine = Files.createTempFile("mine", ".xlsx");
    try {
      Files.write(mine, OWNERS.computeIfAbsent(options.date1904(), Rendered::owners));
      Files.deleteIfExists(file);
      try (WorkbookPackage original = WorkbookPackage.open(mine)) {
        Saving.save(original, file, sheets, sheets.size(), units, options, Saving.NOW);
      }
    } catch (WorkbookRefused e) {
      throw new IllegalStateException(e);
    } finally {
      Files.delete(mine);
    }
  }
}
