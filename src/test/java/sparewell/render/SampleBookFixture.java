package sparewell.render;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** The sample's sheets as another reader, Apache POI 5.5.1, finds them. */
abstract class SampleBookFixture {
  static final int HEADING_ROW = 5;

  static XSSFWorkbook read(List<ReportSheet> sheets, RenderOptions options) throws IOException {
    byte[] bytes = Rendered.workbook(sheets, UnitSystem.US, options);
    return new XSSFWorkbook(new ByteArrayInputStream(bytes));
  }

  static XSSFWorkbook book;

  @BeforeAll
  static void readSample() throws IOException {
    book = read(Sample.sheets(), Sample.options());
  }

  @AfterAll
  static void closeSample() throws IOException {
    book.close();
  }
}
