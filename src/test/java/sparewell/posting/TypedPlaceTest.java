package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Analysed;
import sparewell.AnalysedDemo;
import sparewell.Command;
import sparewell.Ticking;
import sparewell.workbook.Beginner;
import sparewell.workbook.Books;
import sparewell.workbook.OpenBook;

/** The angler types another place than the plan names, ticks it later, and finds it as it was. */
class TypedPlaceTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void everythingIsAtHome() throws Exception {
    book = Analysed.write(atHome(), folder.resolve("first.xlsx"));
  }

  private static Books atHome() {
    return Beginner.book()
        .edit("Stock", text -> text.replaceAll("\\|(Jig|Wire|Crank) box\\|", "|Bin|"));
  }

  private void run(String command) {
    Command run = Command.run(command, book, "--reports", folder.resolve("reports"));
    assertEquals(0, run.exitCode(), run.error());
  }

  /** Types into the first line of a style that is brought aboard. */
  private void type(String style, String heading, Object entry) throws Exception {
    AtomicBoolean found = new AtomicBoolean();
    Function<Ticking.Line, Object> first =
        line -> line.at("Style").equals(style) && !found.getAndSet(true) ? entry : null;
    Ticking.edit(book, open -> Ticking.type(open, "Spares", heading, first));
    assertTrue(found.get(), style);
  }

  private List<String> places() throws Exception {
    return Ticking.typed(book, "Spares", "Into");
  }

  @Test
  void aPlaceAloneStays() throws Exception {
    List<String> planned = places();
    assertTrue(planned.contains("Crank box"), planned.toString());
    assertTrue(!planned.contains("Port locker"), planned.toString());
    type("Squarebill", "Into", "Port locker");
    run("analyse");
    assertEquals(1, places().stream().filter("Port locker"::equals).count());
    type("Squarebill", "Done", "yes");
    run("analyse");
    run("post");
    assertTrue(
        Command.rows(folder.resolve("reports/first/where-it-is.csv")).stream()
            .anyMatch(
                row ->
                    row.get("style").equals("Squarebill")
                        && row.get("compartment").equals("Port locker")
                        && row.get("box").isEmpty()));
  }

  @Test
  void theFrontPageNamesThePlaceThatWasTyped() throws Exception {
    type("Spinnerbait", "Into", "Port locker");
    Command run = Command.run("analyse", book, "--reports", folder.resolve("reports"));
    assertTrue(
        run.out().contains(" Spinnerbait 1/2 oz White, from Bin to Port locker\n"), run.out());
    assertTrue(run.out().contains(" Flipping jig 1/2 oz Black blue, from Bin to Wire box\n"));
  }

  /** The packing list takes the pieces from where the plan had them brought. */
  @Test
  void whatWasBroughtElsewhereIsPackedFromThere() throws Exception {
    Books books =
        atHome()
            .with("Events", "Event|Date|Hours|Box|Slots\nFirst cup|2026-05-23|8|Jig box|9")
            .with("Event plan", "Event|Style|Hours\nFirst cup|Squarebill|8");
    book = Analysed.write(books, folder.resolve("first.xlsx"));
    Ticking.edit(
        book,
        open -> {
          Ticking.type(
              open,
              "Spares",
              "Into",
              line -> line.at("Style").equals("Squarebill") ? "Port locker" : null);
          for (String sheet : List.of("Spares", "Event packing")) {
            assertTrue(
                Ticking.type(
                            open,
                            sheet,
                            "Done",
                            line -> line.at("Style").equals("Squarebill") ? "yes" : null)
                        .size()
                    > 1);
          }
        });
    run("post");
    int pieces = 0;
    int loose = 0;
    for (CSVRecord row : Command.rows(folder.resolve("reports/first/where-it-is.csv"))) {
      if (row.get("style").equals("Squarebill")) {
        pieces += Integer.parseInt(row.get("count"));
        loose += row.get("box").isEmpty() ? Integer.parseInt(row.get("count")) : 0;
      }
    }
    assertEquals(8, pieces, "none was made twice");
    assertTrue(loose > 0 && loose < 8, "some of it is packed: " + loose);
  }

  /** The column is filled down to its end. */
  @Test
  void aBoxThatStaysIsNotLoggedAsMoved() throws Exception {
    Path demo = AnalysedDemo.copy(folder);
    String reports = folder.resolve("reports").toString();
    Set<String> moves = new HashSet<>();
    Set<String> stays = new HashSet<>();
    Ticking.edit(
        demo,
        open -> {
          int done = 0;
          for (OpenBook.Row row : open.rows("Stow plan")) {
            if (row.text(3).equals("From")) {
              done = 1;
              while (!row.text(done).equals("Done")) {
                done++;
              }
            } else if (done > 0 && !row.text(4).isEmpty()) {
              row.cell(done).set("yes");
              (row.text(3).equals(row.text(4)) ? stays : moves).add(row.text(1));
            } else {
              done = 0;
            }
          }
        });
    Command run = Command.run("post", demo, "--reports", reports);
    assertTrue(stays.size() > 1 && moves.size() > 1, stays + " " + moves);
    assertTrue(run.out().contains("Posted: " + moves.size() + " rows of Box log."), run.out());
  }

  @Test
  void aPlaceStaysWhenOtherLinesArePosted() throws Exception {
    type("Squarebill", "Into", "Port locker");
    type("Spinnerbait", "Done", "yes");
    run("post");
    assertEquals(1, places().stream().filter("Port locker"::equals).count());
  }
}
