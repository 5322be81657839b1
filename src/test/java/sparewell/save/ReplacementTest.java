package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.ooxml.Fingerprint;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;
import sparewell.save.file.Replacement;

/** Replacement of a workbook by the new one. */
class ReplacementTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void make() throws Exception {
    folder = folder.toRealPath();
    book = Files.write(folder.resolve("season.xlsx"), Zips.ordinary("Stock", "Trips"));
  }

  @Test
  void theLastTenBackupsStayAndNothingElseIsTouched() throws Exception {
    Path backups = Files.createDirectory(folder.resolve("season-backups"));
    Files.write(backups.resolve("season before the trip.xlsx"), new byte[1]);
    Files.write(backups.resolve("other 2020-01-01 000000.xlsx"), new byte[1]);
    for (int n = 0; n < 14; n++) {
      Saving.save(book, book, Saving.NOW.plusDays(n / 3)); // three in the same second
    }
    List<String> kept = new ArrayList<>(Command.names(backups));
    assertTrue(kept.remove("season before the trip.xlsx"));
    assertTrue(kept.remove("other 2020-01-01 000000.xlsx"));
    assertEquals(10, kept.size());
    assertEquals("season 2026-03-09 173005 (2).xlsx", kept.get(0));
    assertEquals("season 2026-03-09 173005 (3).xlsx", kept.get(1));
    assertEquals("season 2026-03-12 173005.xlsx", kept.get(9));
  }

  @Test
  void aWorkbookThatIsOpenedWhileTheNewOneIsMadeStays() throws Exception {
    byte[] before = Files.readAllBytes(book);
    Replacement replacement = new Replacement(book, Fingerprint.of(book), book, Saving.NOW, 10);
    WorkbookRefused refused =
        assertThrows(
            WorkbookRefused.class,
            () ->
                replacement.replaceBy(
                    fresh -> {
                      Files.write(fresh, Zips.ordinary("Other"));
                      Files.write(folder.resolve("~$season.xlsx"), new byte[1]);
                    }));
    assertTrue(refused.getMessage().contains("has it open"), refused.getMessage());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("season-backups", "season.xlsx", "~$season.xlsx"), Command.names(folder));
  }

  @Test
  void leftoversOfACrashAreRemovedAndOthersStay() throws Exception {
    List<String> left = List.of(".season.xlsx.new.tmp", ".season.xlsx.12ab.tmp");
    List<String> others =
        List.of(
            ".season.xlsx.more.xlsx.new.tmp",
            ".seasons.xlsx.new.tmp",
            ".season.lock.tmp",
            ".season.new.tmp",
            ".season.3.tmp",
            "season.tmp");
    for (String name : left) {
      Files.write(folder.resolve(name), new byte[1]);
    }
    for (String name : others) {
      Files.write(folder.resolve(name), new byte[1]);
    }
    Files.write(folder.resolve(".season.xlsx.lock.tmp"), new byte[1]);
    Saving.into(book);
    List<String> expected = new ArrayList<>(others);
    expected.addAll(List.of("season-backups", "season.xlsx"));
    assertEquals(expected.stream().sorted().toList(), Command.names(folder));
  }

  @Test
  void outWritesAnotherFileAndBacksUpWhatStandsThere() throws Exception {
    byte[] before = Files.readAllBytes(book);
    Path out = folder.resolve("answers.xlsx");
    assertTrue(Saving.save(book, out, Saving.NOW).isEmpty());
    byte[] first = Files.readAllBytes(out);
    Path backup = Saving.save(book, out, Saving.NOW).orElseThrow();
    assertEquals(folder.resolve("answers-backups/answers 2026-03-08 173005.xlsx"), backup);
    assertArrayEquals(first, Files.readAllBytes(backup));
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("answers-backups", "answers.xlsx", "season.xlsx"), Command.names(folder));
  }

  @Test
  void aLinkStaysALinkAndRightsStay() throws Exception {
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"), "no such rights");
    Path link = Files.createSymbolicLink(folder.resolve("link.xlsx"), book);
    Files.setPosixFilePermissions(book, PosixFilePermissions.fromString("rw-r-----"));
    Saving.into(link);
    assertTrue(Files.isSymbolicLink(link));
    assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(book)));
    try (WorkbookPackage opened = WorkbookPackage.open(book)) {
      assertEquals(5, opened.sheets().size());
    }
  }

  @Test
  void runsAtOnceGiveWayAndNoneCorrupts() throws Exception {
    ExecutorService runs = Executors.newFixedThreadPool(4);
    List<Future<Boolean>> results = new ArrayList<>();
    for (int n = 0; n < 12; n++) {
      LocalDateTime now = Saving.NOW.plusSeconds(n);
      results.add(
          runs.submit(
              () -> {
                try {
                  Saving.save(book, book, now);
                  return true;
                } catch (WorkbookRefused e) {
                  assertTrue(
                      e.getMessage().contains("another run")
                          || e.getMessage().contains("changed")
                          || e.getMessage().contains("locked"),
                      e.getMessage());
                  return false;
                }
              }));
    }
    int done = 0;
    for (Future<Boolean> result : results) {
      done += result.get() ? 1 : 0;
    }
    runs.shutdown();
    assertTrue(done >= 1, "at least one gets through");
    try (WorkbookPackage opened = WorkbookPackage.open(book)) {
      assertEquals(5, opened.sheets().size());
    }
    assertEquals(done, Command.names(folder.resolve("season-backups")).size());
    assertEquals(List.of("season-backups", "season.xlsx"), Command.names(folder));
  }

  @Test
  void atLeastOneBackupIsKept() throws Exception {
    Fingerprint read = Fingerprint.of(book);
    for (int kept : new int[] {0, -1}) {
      assertThrows(
          IllegalArgumentException.class,
          () -> new Replacement(book, read, book, Saving.NOW, kept));
    }
  }
}
