package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.workbook.Books;

class ShareRunTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 11);

  @TempDir private Path folder;

  @Test
  void aRunCutShortGoesOnWhereItWas() throws IOException {
    List<Path> books = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      books.add(
          Books.season()
              .plus("Losses", "T1|Crank|3/8|Red|" + (i + 1) + "|snag|no")
              .write(folder.resolve("member " + i + ".xlsx")));
    }
    Path file = folder.resolve("club.csv");
    Path cut = folder.resolve("as it was.csv");
    ShareRun.Result whole = ShareRun.share(books, file, TODAY, done -> keep(done, file, cut));
    assertEquals(7, whole.logs());
    ShareRun.Result after = ShareRun.share(books, cut, TODAY, done -> {});
    assertEquals(7, after.logs());
    long passed =
        after.outcomes().stream()
            .filter(outcome -> outcome.inShort().equals("in the file already"))
            .count();
    assertTrue(passed >= 5, "passed over " + passed);
  }

  /** The file as a run killed after six workbooks leaves it. */
  private static void keep(int done, Path file, Path cut) {
    try {
      if (done == 6) {
        Files.copy(file, cut, StandardCopyOption.REPLACE_EXISTING);
      }
    } catch (IOException disk) {
      throw new UncheckedIOException(disk);
    }
  }
}
