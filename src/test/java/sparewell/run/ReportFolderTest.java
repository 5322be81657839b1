package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
    ReportFolder.write(inside, Map.of("spares.csv", "old\r\ngröße\r\n"));
    assertArrayEquals(
        "old\r\ngröße\r\n".getBytes(StandardCharsets.UTF_8),
        Files.readAllBytes(inside.resolve("spares.csv")));
    assertFalse(Files.exists(inside.resolve("buy-list.csv")));
    assertTrue(Files.exists(note));
  }

  /** A folder that holds a phone's log and a price list under one of our names. */
  @Test
  void filesOfOthersStay(@TempDir Path folder) throws IOException {
    Path log = Files.writeString(folder.resolve("log.csv"), "Date,Lure\n");
    Path prices = Files.writeString(folder.resolve("spares.csv"), "Part,Price\nhook,2\n");
    Map<String, String> run = Map.of("spares.csv", "style,size\r\n", "buy-list.csv", "a,b\r\n");
    for (int times = 0; times < 2; times++) {
      List<String> told = ReportFolder.write(folder, run);
      assertEquals(1, told.size());
      assertTrue(told.get(0).contains("spares.csv was not written by this program"), told.get(0));
      assertEquals("Part,Price\nhook,2\n", Files.readString(prices));
      assertEquals("style,size\r\n", Files.readString(folder.resolve("spares (2).csv")));
      assertTrue(Files.exists(log));
    }
    Files.move(prices, folder.resolve("prices.csv"));
    assertEquals(List.of(), ReportFolder.write(folder, run));
    assertFalse(Files.exists(folder.resolve("spares (2).csv")));
    assertTrue(Files.exists(folder.resolve("prices.csv")));
  }

  /** Files of a version that kept no list are known by their headings, and written anew. */
  @Test
  void filesWithoutAListAreKnownByTheirHeadings(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("spares.csv"), "style,size,colour\r\nold\r\n");
    Files.writeString(folder.resolve("buy-list.csv"), "old,headings\r\n");
    assertEquals(
        List.of(), ReportFolder.write(folder, Map.of("spares.csv", "style,size,tint\r\n")));
    assertEquals("style,size,tint\r\n", Files.readString(folder.resolve("spares.csv")));
    assertTrue(Files.exists(folder.resolve("buy-list.csv")), "on no list, so not ours to remove");
  }

  /** Files changed since are not removed, whatever the list says; nor is anything outside. */
  @Test
  void onlyWhatIsStillAsWrittenIsRemoved(@TempDir Path folder) throws IOException {
    Path inside = folder.resolve("reports");
    ReportFolder.write(
        inside, Map.of("spares.csv", "style,size\r\n", "stow-plan.csv", "box,w\r\n"));
    Files.writeString(inside.resolve("spares.csv"), "style,size\r\nmy notes\r\n");
    Path outside = Files.writeString(folder.resolve("log.csv"), "x\n");
    Path list = inside.resolve(WrittenFiles.NAME);
    Files.writeString(list, Files.readString(list) + "2 1 1 ../log.csv\n2 1 1 log.csv\n");
    ReportFolder.write(inside, Map.of("buy-list.csv", "rank,style\r\n"));
    assertTrue(Files.exists(inside.resolve("spares.csv")));
    assertFalse(Files.exists(inside.resolve("stow-plan.csv")));
    assertTrue(Files.exists(outside));
  }
}
