package sparewell.bench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;

/**
 * Good workbooks with absurd values, in one process of 512 MiB: every run ends with exit code 0 and
 * finite figures on the screen and in all files, within 10 s of CPU. A seed names its season for
 * good. Not in the usual test run: {@code mvn test -Pvalues}; {@code -Dcases=N}, {@code -Dseed=N}.
 */
class ValueCheck {
  private static final int CASES = Integer.getInteger("cases", 5_000);
  private static final long SEED = Long.getLong("seed", 1);
  private static final double MOST_SECONDS = 10;
  private static final int SLOWEST_SHOWN = 10;
  private static final Pattern NOT_FINITE = Pattern.compile("NaN|Infinity|∞|\\bnull\\b");

  @TempDir private Path folder;

  /**
   * A season run.
   *
   * @param seconds CPU of the whole process
   * @param megabytes most heap in use, garbage included
   */
  private record Case(long seed, double seconds, double megabytes, String altered, String fault) {}

  @Test
  void everySeasonEndsInFiniteFigures() throws IOException {
    run(0, folder); // what a first run has to load is no season's own
    List<Case> cases = new ArrayList<>();
    for (long seed = SEED; seed < SEED + CASES; seed++) {
      Case one = run(seed, folder);
      cases.add(one);
      if (!one.fault().isEmpty()) {
        print(one);
      }
    }
    report(cases);
    assertTrue(cases.stream().allMatch(one -> one.fault().isEmpty()));
  }

  private static Case run(long seed, Path folder) throws IOException {
    ValueSeason season = new ValueSeason(seed);
    String altered = season.alter();
    Path book = season.book().write(folder.resolve("season.xlsx"));
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    List<MemoryPoolMXBean> heap =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .toList();
    heap.forEach(MemoryPoolMXBean::resetPeakUsage);
    long start = system.getProcessCpuTime();
    Command run =
        Command.run(
            "analyse", book, "--reports", folder.resolve("reports"), "--as-of", ValueSeason.AS_OF);
    double seconds = (system.getProcessCpuTime() - start) * 1e-9;
    double megabytes = heap.stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() / 1e6;
    String fault = fault(run, folder.resolve("reports/season"));
    if (fault.isEmpty() && seconds > MOST_SECONDS) {
      fault = "slow";
    }
    Files.delete(book);
    delete(folder.resolve("season-backups"));
    return new Case(seed, seconds, megabytes, altered, fault);
  }

  static String fault(Command run, Path reports) throws IOException {
    if (run.exitCode() != 0) {
      return run.error().strip();
    }
    if (NOT_FINITE.matcher(run.out()).find()) {
      return "not finite on the screen: " + run.out();
    }
    for (Map.Entry<String, String> file : new TreeMap<>(Command.files(reports)).entrySet()) {
      for (String line : file.getValue().split("\r\n")) {
        if (NOT_FINITE.matcher(line).find()) {
          return file.getKey() + ": " + line;
        }
      }
    }
    return "";
  }

  private static void report(List<Case> cases) {
    double all = cases.stream().mapToDouble(Case::seconds).sum();
    long bad = cases.stream().filter(one -> !one.fault().isEmpty()).count();
    System.out.printf(
        "%d seasons from seed %d, %d with faults; CPU %.0f s, %.2f s each; most heap %.0f MB;"
            + " slowest:%n",
        cases.size(),
        SEED,
        bad,
        all,
        all / cases.size(),
        cases.stream().mapToDouble(Case::megabytes).max().orElse(0));
    cases.stream()
        .sorted(Comparator.comparingDouble(Case::seconds).reversed())
        .limit(SLOWEST_SHOWN)
        .forEach(ValueCheck::print);
  }

  private static void print(Case one) {
    System.out.printf(
        "seed %d: %.1f s, %.0f MB; %s; %s%n",
        one.seed(), one.seconds(), one.megabytes(), one.fault(), one.altered());
  }

  private static void delete(Path place) throws IOException {
    if (!Files.exists(place)) {
      return;
    }
    try (Stream<Path> all = Files.walk(place)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
