package sparewell.render;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.parallel.ResourceLock;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** The sample's sheets as another reader, Apache POI 5.5.1, finds them. */
@ResourceLock("the sample, whose reader is made for one thread")
abstract class SampleBookFixture {
  static final int HEADING_ROW = 5;

  static XSSFWorkbook read(List<ReportSheet> sheets, RenderOptions options) throws IOException {
    byte[] bytes = Rendered.workbook(sheets, UnitSystem.US, options);
    return new XSSFWorkbook(new ByteArrayInputStream(bytes));
  }

  /** Read once for all; nobody changes it. */
  static final XSSFWorkbook book = sample();

  private static XSSFWorkbook sample() {
    try {
      return read(Sample.sheets(), Sample.options());
    } catch (IOException memory) {
      throw new UncheckedIOException(memory);
    }
  }
}
