package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;

/** Files that must be refused, each with a message that says what it is and what to do. */
abstract class RefusedFileFixture {
  static final String BOOK = "xl/workbook.xml";

  static final String SHEET = "xl/worksheets/sheet1.xml";

  @TempDir Path folder;

  Map<String, byte[]> parts() {
    return new LinkedHashMap<>(Zips.read(Zips.ordinary("Stock", "Trips")));
  }

  void refused(byte[] content, String because) throws Exception {
    Path file = Files.write(folder.resolve("season.xlsx"), content);
    WorkbookRefused refused =
        assertThrows(WorkbookRefused.class, () -> WorkbookPackage.open(file).close());
    assertTrue(refused.problem().contains(because), refused.getMessage());
    assertTrue(refused.getMessage().contains("season.xlsx"), refused.getMessage());
    assertTrue(refused.getMessage().length() > refused.problem().length() + 40, "says what to do");
    assertFalse(refused.getMessage().contains("Exception"), refused.getMessage());
    assertArrayEquals(content, Files.readAllBytes(file));
  }
}
