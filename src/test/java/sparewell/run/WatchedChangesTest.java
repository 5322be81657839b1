package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import sparewell.Command;
import sparewell.workbook.Beginner;
import sparewell.workbook.Books;

/**
 * Data that a running program keeps from one analysis to the next changes no figure. Alone, for
 * another test's analysis would take the place of what is kept.
 */
@Isolated
class WatchedChangesTest {
  @TempDir private Path folder;

  private static Books book() {
    return Beginner.book()
        .with("Events", "Event|Date|Hours|Days|Box|Slots\nOpen|2026-06-05|16|2|Jig box|9")
        .with(
            "Style hours",
            "Trip|Style|Hours\nFirst outing|Stick worm|3\nFirst outing|Craw|2\n"
                + "Second outing|Flipping jig|4");
  }

  @Test
  void everyFigureIsThatOfAColdStart() throws IOException {
    Books book = book();
    Path other = Beginner.book().write(folder.resolve("other.xlsx"));
    List<Runnable> changes =
        List.of(
            () -> {}, // saved again
            () -> book.plus("Trips", "Third outing|2026-05-19|7|wood"),
            () -> book.plus("Losses", "Third outing|Craw|4 in|Black blue|2|snag"),
            () ->
                book.edit(
                    "Stock",
                    text ->
                        text.replace(
                            "Spinnerbait|1/2 oz|White|Wire box|3",
                            "Spinnerbait|1/2 oz|White|Wire box|5")),
            () -> book.plus("Settings", "Chance wanted|0.8"),
            () -> book.edit("Boxes", text -> text.replace("Wire box|Port", "Wire box|Stern")),
            () -> book.plus("Events", "Cup|2026-07-04|8|1||"),
            () -> book.edit("Trips", text -> text.replace("|6|grass", "|8|grass")));
    List<Path> books = new ArrayList<>();
    List<Map<String, String>> kept = new ArrayList<>();
    analyse(book.write(folder.resolve("kept.xlsx")));
    for (Runnable change : changes) {
      change.run();
      books.add(book.write(folder.resolve("cold" + books.size() + ".xlsx")));
      kept.add(analyse(book.write(folder.resolve("kept.xlsx"))));
    }
    for (int i = 0; i < kept.size(); i++) {
      analyse(other); // now nothing of the book is kept
      assertEquals(analyse(books.get(i)), kept.get(i), "after change " + i);
    }
  }

  /** The CSV files of an analysis. */
  private Map<String, String> analyse(Path book) throws IOException {
    Command run = Command.run("analyse", book, "--reports", folder);
    assertEquals(0, run.exitCode(), run.error());
    String name = book.getFileName().toString().replace(".xlsx", "");
    Map<String, String> files = Command.files(folder.resolve(name));
    files.keySet().removeIf(file -> !file.endsWith(".csv"));
    return files;
  }
}
