package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Conditions under which a workbook counts as saved and closed. */
class SavedBooksTest {
  @TempDir private Path folder;

  @Test
  void savedAndClosedAndNotOurOwnDoing() throws IOException {
    Path old = Files.writeString(folder.resolve("old.xlsx"), "there before");
    Files.setLastModifiedTime(
        Files.writeString(folder.resolve("older.xlsx"), "too"), FileTime.fromMillis(0));
    SavedBooks saved = new SavedBooks(folder);
    assertEquals(Optional.of(old), saved.latest());
    assertEquals(List.of(), saved.due());
    Path book = Files.writeString(folder.resolve("mine.xlsx"), "half");
    assertEquals(List.of(), saved.due(), "it may still grow");
    Files.writeString(book, "half and more");
    assertEquals(List.of(), saved.due(), "it grew");
    Path lock = Files.writeString(folder.resolve("~$mine.xlsx"), "");
    assertEquals(List.of(), saved.due(), "it is open");
    Path otherLock = Files.writeString(folder.resolve(".~lock.mine.xlsx#"), "");
    Files.delete(lock);
    assertEquals(List.of(), saved.due(), "it is open elsewhere");
    Files.delete(otherLock);
    assertEquals(List.of(book), saved.due());
    Files.writeString(book, "our sheets in it");
    saved.dealtWith(book, true);
    assertEquals(List.of(), saved.due());
    assertEquals(List.of(), saved.due(), "what we wrote is no news");
    Files.writeString(old, "saved anew, and longer");
    assertEquals(List.of(), saved.due());
    assertEquals(List.of(old), saved.due());
  }

  /** A refused workbook is not tried again until it changes, also if it changed meanwhile. */
  @Test
  void aRefusedOneWaitsForAChange() throws IOException {
    SavedBooks saved = new SavedBooks(folder);
    Path book = Files.writeString(folder.resolve("mine.xlsx"), "bad");
    assertEquals(List.of(), saved.due());
    assertEquals(List.of(book), saved.due());
    saved.dealtWith(book, false);
    assertEquals(List.of(), saved.due());
    assertEquals(List.of(), saved.due());
    Files.writeString(book, "mended while we looked");
    saved.dealtWith(book, false);
    assertEquals(List.of(), saved.due());
    assertEquals(List.of(book), saved.due());
  }
}
