package sparewell.bench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Whole-process time and memory, as a table in Markdown: {@code mvn -Pbench verify}. Every figure
 * is the median of runs taken in turn, so that a busy machine hits all alike.
 */
public final class SpeedBenchmark {
  /** As the launcher sets them. */
  private static final List<String> FLAGS =
      List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xmn40m", "-XX:-UsePerfData");

  private static final String PYTHON =
      "import sys, openpyxl; openpyxl.load_workbook(sys.argv[1]).save('y.xlsx')";

  private final BenchReport report;
  private final Path folder;
  private final Path jar;
  private final Path demo;
  private final int runs;
  private final Path classes;
  private final Path archive;
  private final Path yardArchive;
  private int number;

  private SpeedBenchmark(BenchReport report, Path folder, Path jar, Path demo, int runs) {
    this.report = report;
    this.folder = folder;
    this.jar = jar;
    this.demo = demo;
    this.runs = runs;
    classes = folder.resolve("bench.jar");
    archive = folder.resolve("start.jsa");
    yardArchive = folder.resolve("yardstick.jsa");
  }

  /** Arguments: the program's jar, the demo workbook, runs, and small or all. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory("bench");
    try (BenchReport report =
        BenchReport.of(
            "speed",
            "Time and memory of whole processes",
            "mvn -Pbench -DskipTests verify -Dbench.runs="
                + arguments[2]
                + " -Dbench.size="
                + arguments[3])) {
      new SpeedBenchmark(
              report,
              folder,
              Path.of(arguments[0]).toAbsolutePath(),
              Path.of(arguments[1]).toAbsolutePath(),
              Integer.parseInt(arguments[2]))
          .run(!arguments[3].equals("small"));
    } finally {
      try (Stream<Path> left = Files.walk(folder)) {
        for (Path path : left.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }

  private void run(boolean all) throws Exception {
    packClasses();
    Path season = folder.resolve("season.xlsx");
    SeasonBook.write(season, 1);
    java(List.of("-XX:ArchiveClassesAtExit=" + archive), analyse(fresh(season), "r"));
    java(
        List.of("-XX:ArchiveClassesAtExit=" + yardArchive),
        List.of("-cp", jar + java.io.File.pathSeparator + classes, yardstick(), name(season), "y"));
    report.text(
        "Whole processes, medians of "
            + runs
            + " runs in turn. *Launcher*: C1 only, serial collector, 40 MB of new space, class archive"
            + " made at the first start. Season: 3,000 stock rows, 150 styles, 600 trips, 6,000 style"
            + " hours, 6,000 losses; ten seasons: ten times the rows, 300 styles.");
    report.table(List.of("what", "flags", "wall s", "processor s", "peak MiB", "wall beside POI"));
    single("demo", demo);
    single("season", season);
    if (all) {
      Path large = folder.resolve("large.xlsx");
      SeasonBook.write(large, 10);
      single("ten seasons", large);
    }
    parts("demo", demo);
    parts("season", season);
    many(all ? 40 : 10, all ? 200 : 20);
  }

  private interface Job {
    Measured run() throws Exception;
  }

  /** Runs the jobs in turn, and gives each one's measurements. */
  private Map<String, List<Measured>> inTurn(Map<String, Job> jobs) throws Exception {
    Map<String, List<Measured>> measured = new LinkedHashMap<>();
    for (int run = 0; run < runs; run++) {
      for (Map.Entry<String, Job> job : jobs.entrySet()) {
        measured.computeIfAbsent(job.getKey(), key -> new ArrayList<>()).add(job.getValue().run());
      }
    }
    return measured;
  }

  private void single(String what, Path book) throws Exception {
    Map<String, Job> jobs = new LinkedHashMap<>();
    List<String> tuned = new ArrayList<>(FLAGS);
    tuned.add("-XX:SharedArchiveFile=" + archive);
    List<String> yard = new ArrayList<>(FLAGS);
    yard.add("-XX:SharedArchiveFile=" + yardArchive);
    List<String> poi =
        List.of("-cp", jar + java.io.File.pathSeparator + classes, yardstick(), "", "y.xlsx");
    if (what.equals("demo")) {
      jobs.put(
          "start (--version)|launcher", () -> java(tuned, List.of("-jar", jar + "", "--version")));
      jobs.put(
          "start (--version)|none", () -> java(List.of(), List.of("-jar", jar + "", "--version")));
    }
    jobs.put("POI open + save|launcher", () -> java(yard, with(poi, fresh(book))));
    jobs.put("analyse|launcher", () -> java(tuned, analyse(fresh(book), "r")));
    if (!what.equals("ten seasons")) { // that takes minutes and tells nothing more
      jobs.put("POI open + save|none", () -> java(List.of(), with(poi, fresh(book))));
      jobs.put("analyse|none", () -> java(List.of(), analyse(fresh(book), "r")));
    }
    if (what.equals("season")
        && runs("Rscript", "-e", "library(readxl);library(lme4);library(openxlsx)")) {
      Path script = plugInFit();
      jobs.put(
          "R: read, plug-in fit, write|readxl, lme4, openxlsx",
          () ->
              Measured.run(
                  List.of("Rscript", name(script), name(fresh(book)), "rates.xlsx"), folder));
    }
    if (what.equals("demo")) {
      if (hasOpenpyxl()) {
        jobs.put(
            "openpyxl load + save|python",
            () -> Measured.run(List.of("python3", "-c", PYTHON, name(fresh(book))), folder));
      }
      jobs.put("analyse|launcher, no archive", () -> java(FLAGS, analyse(fresh(book), "r")));
    }
    Map<String, List<Measured>> measured = inTurn(jobs);
    measured.forEach(
        (key, list) -> {
          String flags = key.substring(key.indexOf('|') + 1);
          List<Measured> beside =
              measured.getOrDefault(
                  "POI open + save|" + (flags.equals("none") ? "none" : "launcher"), list);
          report.row(
              "%s: %s | %s | %.2f | %.2f | %.0f | %.2f",
              what,
              key.substring(0, key.indexOf('|')),
              flags,
              median(list, Measured::wallSeconds),
              median(list, Measured::processorSeconds),
              median(list, Measured::peakMib),
              median(list, Measured::wallSeconds) / median(beside, Measured::wallSeconds));
        });
  }

  /** Times of the parts of one analysis, each from a process of its own, in turn. */
  private void parts(String what, Path book) throws Exception {
    Map<String, List<Double>> wall = new LinkedHashMap<>();
    for (int run = 0; run < runs; run++) {
      java(
          FLAGS,
          List.of(
              "-cp",
              jar + java.io.File.pathSeparator + classes,
              Parts.class.getName(),
              name(fresh(book))));
      for (String line : Files.readAllLines(folder.resolve("log.txt"))) {
        String[] cells = line.split(";");
        if (cells.length == 3) {
          wall.computeIfAbsent(cells[0], key -> new ArrayList<>()).add(Double.valueOf(cells[1]));
        }
      }
    }
    report.text("Parts of one run of the " + what + ", one after the other, seconds:");
    report.table(List.copyOf(wall.keySet()));
    report.row(
        wall.values().stream()
            .map(v -> String.format(Locale.ROOT, "%.2f", middle(v)))
            .collect(Collectors.joining(" | ")));
  }

  private Path plugInFit() throws IOException {
    Path script = folder.resolve("plug-in-fit.R");
    try (InputStream in = SpeedBenchmark.class.getResourceAsStream("plug-in-fit.R")) {
      Files.copy(in, script, StandardCopyOption.REPLACE_EXISTING);
    }
    return script;
  }

  private boolean hasOpenpyxl() throws InterruptedException {
    return runs("python3", "-c", "import openpyxl");
  }

  private boolean hasTaskset() throws InterruptedException {
    return runs("taskset", "--version");
  }

  private boolean runs(String... command) throws InterruptedException {
    try {
      Measured.run(List.of(command), folder);
      return true;
    } catch (IOException missing) {
      return false;
    }
  }

  /** Many workbooks in one call, on all cores and on one, beside separate starts. */
  private void many(int books, int most) throws Exception {
    List<String> tuned = new ArrayList<>(FLAGS);
    tuned.add("-XX:SharedArchiveFile=" + archive);
    // Tied to a core from outside: told of one processor, Java still compiles on the others.
    List<String> tied = hasTaskset() ? List.of("taskset", "-c", "0") : List.of();
    List<String> one = new ArrayList<>(tuned);
    one.add("-XX:ActiveProcessorCount=1");
    Map<String, Job> jobs = new LinkedHashMap<>();
    jobs.put("all cores", () -> java(tuned, analyse(copies(books), "rm")));
    jobs.put("one core", () -> java(tied, one, analyse(copies(books), "rm")));
    jobs.put("one separate start", () -> java(tuned, analyse(fresh(demo), "r")));
    jobs.put("one separate start, no flags", () -> java(List.of(), analyse(fresh(demo), "r")));
    report.text("Demo workbooks, " + books + " in one call; " + most + " once:");
    report.table(List.of("how", "wall s", "processor s", "peak MiB", "workbooks a second"));
    inTurn(jobs)
        .forEach((how, list) -> perSecond(how, list, how.startsWith("one separate") ? 1 : books));
    perSecond(most + " once", List.of(java(tuned, analyse(copies(most), "rm"))), most);
  }

  private void perSecond(String how, List<Measured> list, int books) {
    double wall = median(list, Measured::wallSeconds);
    report.row(
        "%s | %.2f | %.2f | %.0f | %.2f",
        how,
        wall,
        median(list, Measured::processorSeconds),
        median(list, Measured::peakMib),
        books / wall);
  }

  private Path copies(int books) throws IOException {
    Path many = folder.resolve("many" + number++);
    Files.createDirectories(many);
    for (int i = 0; i < books; i++) {
      Files.copy(demo, many.resolve("book" + i + ".xlsx"));
    }
    return many;
  }

  private List<String> analyse(Path book, String reports) {
    return List.of("-jar", jar.toString(), "analyse", name(book), "--quiet", "--reports", reports);
  }

  private static List<String> with(List<String> command, Path book) {
    return command.stream().map(word -> word.isEmpty() ? name(book) : word).toList();
  }

  private static String yardstick() {
    return Yardstick.class.getName();
  }

  private static String name(Path book) {
    return book.getFileName().toString();
  }

  /** A copy in the folder, since an analysis writes into the workbook. */
  private Path fresh(Path book) throws IOException {
    Path copy = folder.resolve("run-" + name(book));
    return Files.copy(book, copy, StandardCopyOption.REPLACE_EXISTING);
  }

  private Measured java(List<String> flags, List<String> rest) throws Exception {
    return java(List.of(), flags, rest);
  }

  private Measured java(List<String> before, List<String> flags, List<String> rest)
      throws Exception {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(flags);
    if (flags.stream().anyMatch(flag -> flag.startsWith("-XX:ArchiveClassesAtExit"))) {
      command.addAll(FLAGS);
    }
    command.addAll(rest);
    return Measured.run(command, folder);
  }

  /** The benchmark's classes as a jar: an archive of classes takes no folders. */
  private void packClasses() throws IOException {
    String prefix = SpeedBenchmark.class.getPackageName().replace('.', '/') + "/";
    Path root =
        Path.of(SpeedBenchmark.class.getProtectionDomain().getCodeSource().getLocation().getPath());
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(classes));
        Stream<Path> files = Files.list(root.resolve(prefix))) {
      for (Path file : files.sorted().toList()) {
        out.putNextEntry(new JarEntry(prefix + file.getFileName()));
        try (InputStream in = Files.newInputStream(file)) {
          in.transferTo(out);
        }
      }
    }
  }

  private static double median(List<Measured> list, ToDoubleFunction<Measured> what) {
    return middle(list.stream().map(what::applyAsDouble).toList());
  }

  private static double middle(List<Double> values) {
    List<Double> sorted = values.stream().sorted().toList();
    int n = sorted.size();
    return (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;
  }
}
