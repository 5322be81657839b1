package sparewell.bench;

import java.io.Closeable;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import sparewell.cli.BuildVersion;

/**
 * The figures of a benchmark, printed as they come and written to {@code target/benchmarks}, or
 * with {@code -Dkeep} to {@code reports/benchmarks}: the command that makes them, date, machine and
 * commit, then its tables. What stands in a kept file under the heading {@code Remarks} is written
 * by hand and stays.
 */
public final class BenchReport implements Closeable {
  private static final boolean KEEP = System.getProperty("keep") != null;
  private static final String REMARKS = "\n## Remarks\n";

  private final Path file;
  private final StringBuilder text = new StringBuilder();
  private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);

  private BenchReport(Path file) {
    this.file = file;
  }

  /**
   * Begins a report.
   *
   * @param name of the file, without its ending
   * @param command that makes these figures, in one line
   * @throws IOException if the commit cannot be read from the build
   */
  public static BenchReport of(String name, String title, String command) throws IOException {
    BenchReport report =
        new BenchReport(Path.of(KEEP ? "reports" : "target", "benchmarks", name + ".md"));
    report.line("# " + title);
    report.text("Made by `" + command + (KEEP ? " -Dkeep" : "") + "`");
    report.line(
        String.format(
            "on %s, %s, %d cores, %s %s, %s.",
            LocalDate.now(),
            processor(),
            Runtime.getRuntime().availableProcessors(),
            System.getProperty("java.vm.name"),
            System.getProperty("java.version"),
            new BuildVersion().getVersion()[1].replaceFirst(",.*", "").replace("build", "commit")));
    return report;
  }

  /** The processor's name where the system tells it, else its kind. */
  private static String processor() {
    try (Stream<String> lines = Files.lines(Path.of("/proc/cpuinfo"))) {
      return lines
          .filter(line -> line.startsWith("model name"))
          .map(line -> line.replaceFirst(".*: *", ""))
          .findFirst()
          .orElse(System.getProperty("os.arch"));
    } catch (IOException elsewhere) {
      return System.getProperty("os.arch");
    }
  }

  /** A paragraph. */
  public void text(String paragraph) {
    line("");
    line(paragraph);
  }

  /** Begins a table. */
  public void table(List<String> headings) {
    line("");
    line("| " + String.join(" | ", headings) + " |");
    line("|" + " --- |".repeat(headings.size()));
  }

  /** A row of the table: its cells parted by {@code |}, filled in as {@link String#format} does. */
  public void row(String cells, Object... values) {
    line("| " + String.format(Locale.ROOT, cells, values) + " |");
  }

  private void line(String line) {
    text.append(line).append('\n');
    out.println(line);
  }

  /** Writes the file. */
  @Override
  public void close() throws IOException {
    String before = Files.exists(file) ? Files.readString(file) : "";
    int remarks = before.indexOf(REMARKS);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text + (remarks < 0 ? "" : before.substring(remarks)));
  }
}
