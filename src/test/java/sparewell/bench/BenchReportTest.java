package sparewell.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class BenchReportTest {
  private static final Path FILE = Path.of("target/benchmarks/made-by-a-test.md");

  @AfterEach
  void tidy() throws Exception {
    Files.deleteIfExists(FILE);
  }

  private static String written(double figure) throws Exception {
    try (BenchReport report = BenchReport.of("made-by-a-test", "A title", "mvn -Pnone verify")) {
      report.text("A paragraph.");
      report.table(List.of("case", "figure"));
      report.row("%s | %.2f", "first", figure);
    }
    return Files.readString(FILE);
  }

  @Test
  void saysWhatMadeItAndHoldsItsTables() throws Exception {
    String text = written(1.5);
    assertTrue(text.startsWith("# A title\n\nMade by `mvn -Pnone verify`\non "), text);
    assertTrue(text.contains("on " + LocalDate.now().getYear()), text);
    assertTrue(text.contains(System.getProperty("java.version") + ", commit "), text);
    // With a decimal point, whatever the language of the machine.
    assertTrue(
        text.endsWith("\n\nA paragraph.\n\n| case | figure |\n| --- | --- |\n| first | 1.50 |\n"),
        text);
  }

  @Test
  void remarksWrittenByHandStay() throws Exception {
    String remarks = "\n## Remarks\n\nSlow on Mondays.\n";
    Files.writeString(FILE, written(1.5) + remarks);
    String again = written(2.5);
    assertTrue(again.contains("| first | 2.50 |\n" + remarks), again);
    assertEquals(again, written(2.5));
  }
}
