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
    assertFalse(run.out().contains("no plan keeps"), run.out());
  }

  @Test
  void theBlankCardHasRowsToFillBeforeAnyHoursAreLogged() throws Exception {
    Path book = Beginner.write(folder.resolve("first.xlsx"));
    assertEquals(
        0, Command.run("analyse", book, "--reports", folder.resolve("reports")).exitCode());
    Ticking.edit(
        book,
        open -> {
          assertTrue(Ticking.type(open, "Trip card", "Hours", line -> 1).size() >= 5);
          assertTrue(Ticking.type(open, "Trip card", "Lost", line -> 0).size() >= 10);
        });
  }
}
