package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertIterableEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.sheet.ReportSheets;
import sparewell.workbook.Books;

/** The real command on real workbooks, from file to files. */
class EndToEndTest {
  @TempDir Path folder;

  /** The demo's files are kept in the project; a change of any figure shows here and in review. */
  @Test
  void demoGivesTheFilesKeptInTheProject() throws Exception {
    AnalysedDemo.copy(folder);
    Map<String, String> kept = Command.files(Path.of("reports/demo"));
    Map<String, String> made = Command.files(folder.resolve("reports/demo"));
    assertEquals(kept.keySet(), made.keySet());
    kept.forEach(
        (file, text) ->
            assertIterableEquals(
                text.lines().toList(),
                made.get(file).lines().toList(),
                file + " (if meant, make reports/demo anew by README's first command)"));
    assertTrue(kept.equals(made), "ends of lines differ");
  }

  @Test
  void secondRunGivesTheSameFilesAndNoSecondSheet() throws Exception {
    Path book = Books.season().write(folder.resolve("mine.xlsx"));
    Path reports = folder.resolve("reports");
    assertEquals(0, Command.run("analyse", book, "--reports", reports).exitCode());
    Map<String, String> first = Command.files(reports.resolve("mine"));
    List<String> sheets = sheets(book);
    assertEquals(0, Command.run("analyse", book, "--reports", reports).exitCode());
    assertEquals(first, Command.files(reports.resolve("mine")));
    assertEquals(sheets, sheets(book));
    assertEquals(ReportSheets.FRONT, sheets.get(0));
    List<String> behind = ReportSheets.names().subList(1, ReportSheets.names().size());
    assertEquals(behind, sheets.subList(sheets.size() - behind.size(), sheets.size()));
  }

  /**
   * Pump failures (Gaver and O'Muircheartaigh 1987), losses = failures, hours = operating time in
   * thousands. Published full-Bayes means: BUGS Examples Volume 1, "Pumps", results table (20,000
   * samples, priors alpha ~ Exp(1), beta ~ Gamma(0.1, 1)). Spread over very many days, the extra
   * variation of the counts vanishes and the model is that of the example but for its priors: ours
   * expects styles of a family to differ less than these pumps do, and so pulls the few with hardly
   * any hours a little more. Means must lie within 0.4 of a published posterior standard deviation.
   */
  @Test
  void pumpFailuresAgreeWithThePublishedMeans() throws Exception {
    int[] failures = {5, 1, 5, 14, 3, 19, 1, 1, 4, 22};
    double[] time = {94.3, 15.7, 62.9, 126, 5.24, 31.4, 1.05, 1.05, 2.1, 10.5};
    double[] mean = {0.05969, 0.1021, 0.08897, 0.1157, 0.6, 0.6084, 0.8904, 0.8946, 1.588, 1.995};
    double[] sd = {0.02497, 0.08085, 0.03733, 0.03, 0.3157, 0.1367, 0.7174, 0.7322, 0.7679, 0.4259};
    StringBuilder styles = new StringBuilder("Style|Family");
    StringBuilder hours = new StringBuilder("Trip|Style|Hours");
    StringBuilder losses = new StringBuilder("Trip|Style|Lost");
    for (int i = 0; i < time.length; i++) {
      styles.append("\nPump ").append(i + 1).append("|Pumps");
      hours.append("\nT1|Pump ").append(i + 1).append('|').append(time[i]);
      losses.append("\nT1|Pump ").append(i + 1).append('|').append(failures[i]);
    }
    Path book =
        Books.season()
            .with("Styles", styles.toString())
            .with("Stock", "Style|Box|Count")
            .with("Trips", "Trip|Date|Hours|Days\nT1|2026-03-01|350|10000")
            .with("Style hours", hours.toString())
            .with("Losses", losses.toString())
            .write(folder.resolve("pumps.xlsx"));
    Command run = Command.run("analyse", book, "--reports", folder.resolve("reports"));
    assertEquals(0, run.exitCode(), run.error());
    Map<String, CSVRecord> rates = new HashMap<>();
    for (CSVRecord row : Command.rows(folder.resolve("reports/pumps/loss-rates.csv"))) {
      rates.put(row.get("style"), row);
    }
    for (int i = 0; i < time.length; i++) {
      CSVRecord row = rates.get("Pump " + (i + 1));
      double rate = Double.parseDouble(row.get("rate_per_10h")) / 10;
      assertEquals(mean[i], rate, 0.4 * sd[i], "pump " + (i + 1));
      assertEquals(failures[i] / time[i] * 10, Double.parseDouble(row.get("raw_per_10h")), 1e-6);
      assertTrue(Double.parseDouble(row.get("low90_per_10h")) < rate * 10);
      assertTrue(Double.parseDouble(row.get("high90_per_10h")) > rate * 10);
    }
  }

  @Test
  void checkWritesNothing() throws Exception {
    Path book = Books.season().write(folder.resolve("mine.xlsx"));
    byte[] before = Files.readAllBytes(book);
    Command run = Command.run("check", book);
    assertEquals(0, run.exitCode(), run.error());
    assertTrue(java.util.Arrays.equals(before, Files.readAllBytes(book)));
    try (var inside = Files.list(folder)) {
      assertEquals(List.of(book), inside.toList());
    }
  }

  private static List<String> sheets(Path book) throws Exception {
    try (XSSFWorkbook workbook = new XSSFWorkbook(book.toFile())) {
      return IntStream.range(0, workbook.getNumberOfSheets())
          .mapToObj(workbook::getSheetName)
          .toList();
    }
  }
}
