package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Excerpts of the demo in README are those that a run gives. */
class ReadmeTest {
  @TempDir private Path folder;

  @Test
  void showsWhatARunGives() throws Exception {
    AnalysedDemo.copy(folder);
    String readme = Files.readString(Path.of("README.md"));
    String steps = readme.split("Do this, in this order\n")[1].split("```")[0];
    assertTrue(AnalysedDemo.said().contains(steps), "README shows\n" + steps + AnalysedDemo.said());
    assertEquals(ratesIn(readme), rates(folder.resolve("reports/demo/loss-rates.csv"), readme));
  }

  /** The rows of README's table of rates: style to hours, lost, raw, rate, low, high and note. */
  private static Map<String, List<String>> ratesIn(String readme) {
    Map<String, List<String>> rows = new HashMap<>();
    String table = readme.split("\\| Style \\| Hours .*\n.*\n")[1].split("\n\n")[0];
    table
        .lines()
        .map(line -> line.substring(1, line.length() - 1).split("\\|", -1))
        .map(cells -> Stream.of(cells).map(String::strip).toList())
        .forEach(cells -> rows.put(cells.get(0), cells.subList(1, cells.size())));
    return rows;
  }

  /** The same of the styles that README shows, out of the file. */
  private static Map<String, List<String>> rates(Path file, String readme) throws Exception {
    Map<String, List<String>> rows = new HashMap<>();
    for (CSVRecord row : Command.rows(file)) {
      if (ratesIn(readme).containsKey(row.get("style"))) {
        rows.put(
            row.get("style"),
            List.of(
                rounded(row, "hours", "%.1f"),
                row.get("lost"),
                rounded(row, "raw_per_10h", "%.2f"),
                rounded(row, "rate_per_10h", "%.2f"),
                rounded(row, "low90_per_10h", "%.2f"),
                rounded(row, "high90_per_10h", "%.2f"),
                row.get("note")));
      }
    }
    return rows;
  }

  private static String rounded(CSVRecord row, String column, String form) {
    return String.format(Locale.ROOT, form, Double.parseDouble(row.get(column)));
  }
}
