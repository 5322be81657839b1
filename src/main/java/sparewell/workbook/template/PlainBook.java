package sparewell.workbook.template;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A workbook with one sheet of text, into which sheets of ours may be put. */
public final class PlainBook {
  private static final int WIDTH = 100 * 256; // in 256ths of a digit

  private PlainBook() {}

  /**
   * Writes it over a file.
   *
   * @param sheet name of the sheet
   * @param lines its text, a row each
   */
  public static void write(Path file, String sheet, List<String> lines) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      XSSFSheet page = book.createSheet(sheet);
      page.setColumnWidth(0, WIDTH);
      for (int i = 0; i < lines.size(); i++) {
        page.createRow(i).createCell(0).setCellValue(lines.get(i));
      }
      ByteArrayOutputStream raw = new ByteArrayOutputStream();
      book.write(raw);
      Files.write(file, FixedZip.mended(raw.toByteArray()));
    }
  }
}
