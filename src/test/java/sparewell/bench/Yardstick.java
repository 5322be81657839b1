package sparewell.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Cost of any program built on the object model of Apache POI: opens a workbook and saves it. */
public final class Yardstick {
  private Yardstick() {}

  /** Opens the first file and saves it as the second. */
  public static void main(String[] arguments) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(Path.of(arguments[0])));
        OutputStream out = Files.newOutputStream(Path.of(arguments[1]))) {
      book.write(out);
    }
  }
}
