package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.units.UnitSystem;

/**
 * Sheets as a reader in another language, openpyxl 3 under Python 3, finds them; skipped without
 * it.
 */
class OpenpyxlTest {
  private static final String SCRIPT =
      """
      import sys, openpyxl
      for sheet in openpyxl.load_workbook(sys.argv[1]):
          print(sheet.title, sheet.freeze_panes, len(sheet._charts), *sheet.tables.keys())
      sheet = openpyxl.load_workbook(sys.argv[1], data_only=True)['Shelves']
      print(sheet['B47'].value, sheet['G8'].value.date(), sheet['A6'].comment.text)
      """;

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return process.waitFor() == 0 ? said : "failed: " + said;
  }

  private static String python() throws InterruptedException {
    for (String python : List.of("python3", "/usr/bin/python3")) {
      try {
        if (run(python, "-c", "import openpyxl").isEmpty()) {
          return python;
        }
      } catch (IOException absent) {
        // The next one may be there.
      }
    }
    return "";
  }

  @Test
  void readsTheSame(@TempDir Path folder) throws IOException, InterruptedException {
    String python = python();
    assumeTrue(!python.isEmpty(), "no python3 with openpyxl");
    Path book = folder.resolve("sample.xlsx");
    Files.write(book, Rendered.workbook(Sample.sheets(), UnitSystem.US, Sample.options()));
    int pieces = Sample.SHELVES.stream().mapToInt(Sample.Shelf::pieces).sum();
    assertEquals(
        List.of(
            "Front A2 0",
            "Shelves A7 0 sw_shelves",
            "Charts A2 5 sw_charts_rates",
            "Plan A2 0",
            "Labels None 0 sw_labels_codes_of_colours",
            "Forecast A2 5 sw_forecast_store_by_store",
            "Mine None 0",
            pieces + " 2026-01-04 Name of the shelf."),
        run(python, "-W", "ignore", "-c", SCRIPT, book.toString())
            .lines()
            .map(String::strip)
            .collect(Collectors.toList()));
  }
}
