package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The folder of CSV files holds one run and no other. */
class ReportFolderTest {
  @Test
  void filesAreUtf8WithoutMarkAndThoseOfAnEarlierRunLeave(@TempDir Path folder) throws IOException {
    Path inside = folder.resolve("reports");
    ReportFolder.write(inside, Map.of("spares.csv", "old\r\n", "buy-list.csv", "old\r\n"));
    Path note = Files.writeString(inside.resolve("note.txt"), "the angler's");
    ReportFolder.write(inside, Map.of("spares.csv", "size\r\ngröße\r\n"));
    assertArrayEquals(
        "size\r\ngröße\r\n".getBytes(StandardCharsets.UTF_8),
        Files.readAllBytes(inside.resolve("spares.csv")));
    assertFalse(Files.exists(inside.resolve("buy-list.csv")));
    assertTrue(Files.exists(note));
  }
}
