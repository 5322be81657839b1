package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.workbook.Beginner;
import sparewell.workbook.OpenBook;

/** A beginner's first run: what he sees first are his own slips, and no fault that is none. */
class BeginnerTest {
  @TempDir private Path folder;

  @Test
  void theFirstScreenHoldsNoErrorButTheSlips() throws Exception {
    Path book = Beginner.write(folder.resolve("first.xlsx"));
    Command run = Command.run("analyse", book, "--reports", folder.resolve("reports"));
    assertEquals(0, run.exitCode(), run.error());
    List<CSVRecord> errors =
        Command.rows(folder.resolve("reports/first/input-checks.csv")).stream()
            .filter(row -> row.get("severity").equals("error"))
            .toList();
    assertEquals(
        List.of("Stock E5", "Losses B3"),
        errors.stream().map(row -> row.get("sheet") + " " + row.get("cell")).toList(),
        errors.toString());
    assertTrue(run.out().contains("1. Mend 2 errors in your sheets"), run.out());
    assertTrue(run.out().contains("did you mean 'Stick worm'?"), run.out());
    assertTrue(run.out().contains("(Losses B3)"), run.out());
    assertFalse(run.out().contains("no plan keeps"), run.out());
    // His counts have no date: one warning tells what they leave out, and what to type where.
    List<String> told = Ticking.texts(OpenBook.of(book), "After trip");
    assertEquals(
        1, told.stream().filter(text -> text.matches(".*pieces left out: \\d+.*")).count());
    assertTrue(told.toString().contains("in Settings beside 'Stock counted on'"), told.toString());
  }

  /**
   * Before the first trip nothing tells gear from lures but its name and what is needed at once.
   */
  @Test
  void gearIsNotAskedForLikeLures() throws Exception {
    Path book =
        Beginner.book()
            .with("Trips", "Trip|Date|Hours")
            .with("Losses", "Trip|Style|Lost")
            .edit("Styles", text -> text.replaceFirst("price", "price|Needed at once"))
            .plus("Styles", "Pliers|Other|5|20\nNet|Nets and tools|40|60\nLong one|Other|13|99|2")
            .plus("Stock", "Pliers|||Jig box|1\nNet|||Bow locker|1\nLong one|||Bow locker|2")
            .write(folder.resolve("first.xlsx"));
    Command run = Command.run("analyse", book, "--reports", folder.resolve("reports"));
    assertEquals(0, run.exitCode(), run.error());
    List<String> gear = List.of("Pliers", "Net", "Long one");
    for (CSVRecord row : Command.rows(folder.resolve("reports/first/spares.csv"))) {
      boolean lure = !gear.contains(row.get("style"));
      assertEquals(lure, Double.parseDouble(row.get("expected_loss")) > 0, row.toString());
      assertTrue(lure || row.get("carry").equals("3"), "the floor of the settings: " + row);
    }
    for (CSVRecord row : Command.rows(folder.resolve("reports/first/loss-rates.csv"))) {
      assertEquals(
          gear.contains(row.get("style")), row.get("rate_per_10h").isEmpty(), row.toString());
    }
    List<Ticking.Line> asked = Ticking.lines(book, "Trip card", "Hours");
    assertEquals(6, asked.size(), "all lures");
    assertTrue(asked.stream().noneMatch(line -> gear.contains(line.at("Style"))));
  }

  @Test
  void theBlankCardHasRowsToFillBeforeAnyHoursAreLogged() throws Exception {
    Path book = Beginner.write(folder.resolve("first.xlsx"));
    assertEquals(
        0, Command.run("analyse", book, "--reports", folder.resolve("reports")).exitCode());
    assertTrue(Ticking.lines(book, "Trip card", "Hours").size() >= 5);
    assertTrue(Ticking.lines(book, "Trip card", "Lost").size() >= 10);
  }
}
