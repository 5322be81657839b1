package sparewell.workbook.template;

import java.io.IOException;
import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A workbook with one sheet of text, into which sheets of ours may be put. */
final class PlainBook {
  private static final int WIDTH = 100 * 256; // in 256ths of a digit

  private PlainBook() {}

  /**
   * Makes it.
   *
   * @param title of the document
   * @param sheet name of the sheet
   * @param lines its text, a row each
   */
  static byte[] bytes(String title, String sheet, List<String> lines) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      XSSFSheet page = book.createSheet(sheet);
      page.setColumnWidth(0, WIDTH);
      for (int i = 0; i < lines.size(); i++) {
        page.createRow(i).createCell(0).setCellValue(lines.get(i));
      }
      return TemplateWriter.bytes(book, title);
    }
  }
}
