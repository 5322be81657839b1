package sparewell.stow;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import sparewell.bench.BenchReport;

/**
 * Quality and cost of the stow plan of {@code analyse}, on seeded invented boats of three sizes
 * with all limits and volumes 70 to 85 % full: the plan a user gets, no other effort. Beside it the
 * best plan known of each case ({@code reference/stow-best-known.csv}) and, where the program cbc
 * (Debian package coinor-cbc) is there, what it finds on one thread.
 *
 * <p>Arguments: cases of each size, seconds for cbc per case (0: without it).
 */
public final class StowingBenchmark {
  private static final int[][] SIZES = {{18, 6}, {40, 10}, {80, 14}};

  private StowingBenchmark() {}

  /** A row for each case, and one for each size. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    int cases = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10;
    int seconds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 0;
    Map<String, Double> known = known();
    try (BenchReport report =
        BenchReport.of(
            "stowing",
            "Stow plans: how good, how fast",
            "mvn -q -Pstowing test-compile -Dstowing.cases="
                + cases
                + " -Dstowing.otherSeconds="
                + seconds)) {
      report.text(
          "What `analyse` gives, no other effort: seeded cases, all limits, 70 to 85 % full, one"
              + " thread, CPU seconds with the whole curve of moves. *Best known* stands in"
              + " `src/test/resources/reference/stow-best-known.csv`.");
      report.table(
          List.of(
              "case",
              "tackle's moment kg m",
              "from best known %",
              "proven gap %",
              "CPU s",
              "cbc kg m"));
      for (int[] size : SIZES) {
        rows(report, known, size, cases, seconds);
      }
    }
  }

  private static void rows(
      BenchReport report, Map<String, Double> known, int[] size, int cases, int seconds)
      throws IOException, InterruptedException {
    int proven = 0;
    double[] sum = new double[3];
    double[] worst = new double[3];
    for (int seed = 1; seed <= cases; seed++) {
      String name = size[0] + "x" + size[1] + "-" + seed;
      StowCases.Case drawn = StowCases.planted(size[0], size[1], seed);
      double start = cpuSeconds();
      StowPlan plan = StowPlanner.plan(drawn.season(), drawn.onHand());
      double took = cpuSeconds() - start;
      double moment = plan.best().orElseThrow().momentKgM();
      double beside = 100 * (moment / known.getOrDefault(name, moment) - 1);
      Optional<Double> other = seconds > 0 ? cbc(drawn, seconds) : Optional.empty();
      proven += plan.bestGapPercent() == 0 ? 1 : 0;
      double[] figures = {beside, plan.bestGapPercent(), took};
      for (int k = 0; k < 3; k++) {
        sum[k] += figures[k];
        worst[k] = Math.max(worst[k], figures[k]);
      }
      report.row(
          "%s | %.6f | %.3f | %.3f | %.2f | %s",
          name,
          moment,
          beside,
          plan.bestGapPercent(),
          took,
          other.map(value -> String.format(Locale.ROOT, "%.6f", value)).orElse(""));
    }
    report.row(
        "**%d x %d** | proven best %d of %d | mean %.3f, worst %.3f | mean %.3f, worst %.3f | mean"
            + " %.2f, worst %.2f |",
        size[0],
        size[1],
        proven,
        cases,
        sum[0] / cases,
        worst[0],
        sum[1] / cases,
        worst[1],
        sum[2] / cases,
        worst[2]);
  }

  private static double cpuSeconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() * 1e-9;
  }

  private static Map<String, Double> known() throws IOException {
    Map<String, Double> known = new HashMap<>();
    Path file = Path.of("src/test/resources/reference/stow-best-known.csv");
    for (String line : Files.readAllLines(file)) {
      String[] cells = line.split(",");
      if (cells[0].contains("x") && !line.startsWith("#")) {
        known.put(cells[0], Double.parseDouble(cells[1]));
      }
    }
    return known;
  }

  /** The moment of the plan that cbc finds in that many CPU seconds; empty without cbc or plan. */
  private static Optional<Double> cbc(StowCases.Case drawn, int seconds)
      throws IOException, InterruptedException {
    AboardLoads loads = AboardLoads.of(drawn.season(), drawn.onHand());
    StowSetup setup = new StowSetup(drawn.season(), loads, drawn.onHand());
    StowProblem problem = setup.problem;
    Path folder = Files.createTempDirectory("stowing");
    Path model = folder.resolve("case.lp");
    Path solution = folder.resolve("case.sol");
    try {
      Files.writeString(model, LpFile.of(problem, -1));
      Process process =
          new ProcessBuilder(
                  "cbc",
                  model.toString(),
                  "sec",
                  Integer.toString(seconds),
                  "ratioGap",
                  "0",
                  "solve",
                  "solu",
                  solution.toString())
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      process.waitFor(20L * seconds + 60, TimeUnit.SECONDS);
      process.destroy();
      if (!Files.exists(solution)) {
        return Optional.empty();
      }
      List<String> lines = Files.readAllLines(solution);
      int[] place = new int[problem.boxCount()];
      int placed = 0;
      for (String line : lines.subList(1, lines.size())) {
        String[] parts = line.strip().split("\\s+");
        if (parts.length >= 3 && parts[1].startsWith("x") && Double.parseDouble(parts[2]) > 0.5) {
          String[] name = parts[1].substring(1).split("_");
          place[Integer.parseInt(name[0])] = Integer.parseInt(name[1]);
          placed++;
        }
      }
      return placed == problem.boxCount()
          ? Optional.of(setup.standing(place).momentKgM())
          : Optional.empty();
    } catch (IOException notInstalled) {
      return Optional.empty();
    } finally {
      Files.deleteIfExists(model);
      Files.deleteIfExists(solution);
      Files.deleteIfExists(folder);
    }
  }
}
