package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.workbook.Beginner;
import sparewell.workbook.Books;

/** What a running program keeps from one analysis to the next changes no figure. */
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
    analyse(book, "kept");
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
    for (int i = 0; i < changes.size(); i++) {
      changes.get(i).run();
      Map<String, String> kept = analyse(book, "kept");
      analyse(Beginner.book(), "other"); // now nothing of the first workbook is kept
      assertEquals(analyse(book, "cold"), kept, "after change " + i);
      analyse(book, "kept");
    }
  }

  /** The CSV files of an analysis. */
  private Map<String, String> analyse(Books book, String name) throws IOException {
    Path reports = folder.resolve(name);
    Command run =
        Command.run(
            "analyse", book.write(folder.resolve(name + ".xlsx")), "--reports", reports.toString());
    assertEquals(0, run.exitCode(), run.error());
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.list(reports.resolve(name))) {
      for (Path file : all.filter(one -> one.toString().endsWith(".csv")).toList()) {
        files.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return files;
  }
}
