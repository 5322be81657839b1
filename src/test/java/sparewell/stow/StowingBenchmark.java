package sparewell.stow;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * How good the stow plans are and how long they take, on seeded invented boats of three sizes with
 * all limits and volumes 70 to 85 % full. Where the program cbc (Debian package coinor-cbc) is
 * there, it solves the same cases as an independent solver, on one thread.
 *
 * <p>Arguments: cases of each size, seconds for cbc per case (0: without it).
 */
public final class StowingBenchmark {
  private static final int[][] SIZES = {{18, 6}, {40, 10}, {80, 14}};

  private StowingBenchmark() {}

  /** Prints one line for each case and a summary as a Markdown table. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    int cases = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10;
    int seconds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 0;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.println(
        "| case | moment kg m | proven gap % | CPU s | cbc moment | to cbc % | curve CPU s |");
    out.println("| --- | --- | --- | --- | --- | --- | --- |");
    for (int[] size : SIZES) {
      Total total = new Total();
      for (int seed = 1; seed <= cases; seed++) {
        out.println(line(size, seed, seconds, total));
      }
      out.println(total.line(size, cases));
    }
  }

  private static final class Total {
    int proven;
    int missing;
    double worstGap;
    double worstSeconds;
    double worstCurve;
    double worstToOther = Double.NEGATIVE_INFINITY;

    String line(int[] size, int cases) {
      return text(
          "| **%d x %d** | proven best %d of %d, without plan %d | worst %.3f | worst %.2f | | worst"
              + " %s | worst %.2f |",
          size[0],
          size[1],
          proven,
          cases,
          missing,
          worstGap,
          worstSeconds,
          worstToOther == Double.NEGATIVE_INFINITY ? "not run" : text("%.3f", worstToOther),
          worstCurve);
    }
  }

  private static String line(int[] size, int seed, int seconds, Total total)
      throws IOException, InterruptedException {
    StowCases.Case drawn = StowCases.planted(size[0], size[1], seed);
    StowProblem problem =
        new StowSetup(drawn.season(), AboardLoads.of(drawn.season(), drawn.onHand())).problem;
    double start = cpuSeconds();
    StowSolver.Answer answer = new StowSolver(problem, thorough(problem.boxCount)).best();
    double took = cpuSeconds() - start;
    start = cpuSeconds();
    StowPlanner.plan(drawn.season(), drawn.onHand());
    double curve = cpuSeconds() - start;
    if (!answer.found()) {
      total.missing++;
      return text("| %dx%d-%d | no plan | | %.2f | | | |", size[0], size[1], seed, took);
    }
    double gap = 100 * (answer.moment() - answer.bound()) / Math.abs(answer.moment());
    Optional<Double> other = seconds > 0 ? cbc(problem, seconds) : Optional.empty();
    Optional<Double> toOther = other.map(value -> 100 * (answer.moment() / value - 1));
    total.proven += answer.proven() ? 1 : 0;
    total.worstGap = Math.max(total.worstGap, gap);
    total.worstSeconds = Math.max(total.worstSeconds, took);
    total.worstCurve = Math.max(total.worstCurve, curve);
    toOther.ifPresent(value -> total.worstToOther = Math.max(total.worstToOther, value));
    return text(
        "| %dx%d-%d | %.4f | %.3f | %.2f | %s | %s | %.2f |",
        size[0],
        size[1],
        seed,
        answer.moment(),
        gap,
        took,
        other.map(value -> text("%.4f", value)).orElse(""),
        toOther.map(value -> text("%.3f", value)).orElse(""),
        curve);
  }

  /** Up to 10 s of one core, on a slow machine too. */
  static Effort thorough(int boxes) {
    return boxes > 40
        ? new Effort(14, 50_000L * boxes, 70_000_000, 0, 0)
        : new Effort(24, 1_250L * boxes * boxes, 120_000_000, 0, 0);
  }

  private static double cpuSeconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() * 1e-9;
  }

  private static String text(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }

  /** The moment of the plan that cbc finds in that many CPU seconds; empty without cbc or plan. */
  private static Optional<Double> cbc(StowProblem problem, int seconds)
      throws IOException, InterruptedException {
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
      int[] place = new int[problem.boxCount];
      int placed = 0;
      for (String line : lines.subList(1, lines.size())) {
        String[] parts = line.strip().split("\\s+");
        if (parts.length >= 3 && parts[1].startsWith("x") && Double.parseDouble(parts[2]) > 0.5) {
          String[] name = parts[1].substring(1).split("_");
          place[Integer.parseInt(name[0])] = Integer.parseInt(name[1]);
          placed++;
        }
      }
      return placed == problem.boxCount
          ? Optional.of(problem.moment(place) * 1e-12)
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
