package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ColumnsTest {
  private static final Path DECLARED = Path.of("src/main/resources/sparewell/sheet/columns.txt");

  @Test
  void everyDeclaredColumnIsShownBySomeSheet() throws IOException {
    String sources;
    try (Stream<Path> files = Files.list(Path.of("src/main/java/sparewell/sheet"))) {
      sources = files.map(ColumnsTest::text).collect(Collectors.joining());
    }
    List<String> unused = new ArrayList<>();
    int seen = 0;
    for (String line : Files.readAllLines(DECLARED)) {
      String[] fields = line.split(" *\\| ");
      if (line.isBlank() || line.startsWith("#") || line.startsWith("[")) {
        continue;
      }
      assertEquals(4, fields.length, line);
      seen++;
      String name = fields[fields[0].isEmpty() ? 1 : 0];
      if (!sources.contains('"' + name + '"')) {
        unused.add(line);
      }
    }
    assertTrue(seen > 100, "columns seen: " + seen);
    assertEquals(List.of(), unused);
  }

  @Test
  void aColumnThatNoLineDeclaresIsRefused() {
    Columns<String> items = Columns.of("Items");
    assertEquals("Style", items.column("style", text -> text).heading());
    assertEquals("", items.column("style", text -> text, false).heading());
    assertThrows(IllegalArgumentException.class, () -> items.column("stile", text -> text));
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException failed) {
      throw new java.io.UncheckedIOException(failed);
    }
  }
}
