package sparewell.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.Command;
import sparewell.workbook.Books;

/** The short form of {@link ValueCheck}, and the losses that once gave no finite figure. */
class AbsurdValuesTest {
  @TempDir private Path folder;

  /** Seasons that once ended in a fault. */
  @ParameterizedTest
  @ValueSource(longs = {12, 55, 286})
  void aSeasonOfAbsurdValuesEndsInFiniteFigures(long seed) throws Exception {
    ValueSeason season = new ValueSeason(seed);
    String altered = season.alter();
    finite(season.book(), altered);
  }

  @Test
  void eightHundredLostAtOnceIsAskedAbout() throws Exception {
    finite(Books.season().plus("Losses", "T1|Crank|'3/8|Red|800|snag|"), "800 lost");
    assertTrue(
        Command.rows(folder.resolve("reports/season/input-checks.csv")).stream()
            .anyMatch(row -> row.get("message").contains("802")),
        "800 and the 2 of the row above");
  }

  @Test
  void fourHundredRowsOfUpToFortyAreTaken() throws Exception {
    String rows =
        IntStream.range(0, 400)
            .mapToObj(i -> "T1|Crank|'3/8|Red|" + (1 + i % 40) + "|snag|")
            .collect(Collectors.joining("\n"));
    finite(Books.season().plus("Losses", rows), "400 rows");
  }

  private void finite(Books book, String what) throws Exception {
    Path file = book.write(folder.resolve("season.xlsx"));
    Path reports = folder.resolve("reports");
    Command run = Command.run("analyse", file, "--reports", reports, "--as-of", ValueSeason.AS_OF);
    assertEquals("", ValueCheck.fault(run, reports.resolve("season")), what);
  }
}
