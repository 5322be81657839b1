package sparewell.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.Command;
import sparewell.workbook.Books;

/** What the command line accepts, prints, writes and returns. */
class CommandLineTest {
  @TempDir private Path folder;
  private Path book;
  private Path reports;

  @BeforeEach
  void make() throws IOException {
    folder = folder.toRealPath();
    book = Books.season().write(folder.resolve("season.xlsx"));
    reports = folder.resolve("out/reports");
  }

  private Path bad(String name) {
    return Books.season()
        .plus("Losses", "T1|Crank|'3/8|Red|minus one|snag|no")
        .write(folder.resolve(name));
  }

  private Command analyse(Object... more) {
    Object[] all =
        Stream.concat(Stream.of("analyse", "--reports", reports), Arrays.stream(more)).toArray();
    return Command.run(all);
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .map(p -> folder.relativize(p).toString())
          .sorted()
          .toList();
    }
  }

  private static void usage(Command command, String... because) {
    assertEquals(2, command.exitCode(), command.toString());
    assertEquals("", command.out());
    for (String part : because) {
      assertTrue(command.error().contains(part), command.error());
    }
    assertTrue(command.error().lines().count() <= 4, command.error());
    assertTrue(command.error().contains("--help'"), command.error());
    assertFalse(command.error().contains("Exception"), command.error());
  }

  private void refused(Command command, String... because) {
    assertEquals(3, command.exitCode(), command.toString());
    for (String part : because) {
      assertTrue(command.error().contains(part), command.error());
    }
    assertFalse(command.error().contains("Exception"), command.error());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "frob", "analyse", "check", "new", "import", "import BOOK"})
  void nothingToWorkOn(String line) {
    usage(Command.run((Object[]) line.replace("BOOK", book.toString()).split(" ", -1)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "1", "1.5", "-0.5", "49", "100", "99.95"})
  void chanceOutOfRange(String chance) throws IOException {
    byte[] before = Files.readAllBytes(book);
    usage(analyse(book, "--chance", chance), "--chance must lie between 0 and 1", chance);
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("season.xlsx"), files());
  }

  @Test
  void valuesThatAreNone() {
    usage(analyse(book, "--chance", "NaN"), "'NaN' is not a number");
    usage(analyse(book, "--chance", "often"), "--chance", "'often' is not a number");
    usage(analyse(book, "--budget", "-5"), "--budget must be 0 to 1000000000: -5");
    usage(analyse(book, "--budget", "999999999999999.9999"), "--budget must be 0 to 1000000000");
    usage(analyse(book, "--as-of", "1200-01-01"), "--as-of must be a date between 1950 and 2199");
    usage(Command.run("check", book, "--as-of", "9999-12-31"), "--as-of must be a date between");
    usage(analyse(book, "--budget", "ten"), "'ten' is not a number");
    usage(analyse(book, "--as-of", "2026-13-01"), "'2026-13-01' is not a date");
    usage(analyse(book, "--as-of", "05/03/2026"), "write it like 2026-05-03");
    usage(analyse(book, "--bogus"), "--bogus");
    usage(analyse(book, "--as-of"), "--as-of");
    usage(Command.run("new", folder.resolve("n.xlsx"), "--units", "imperial"), "us or metric");
  }

  /** What is out of range is a finding, the same of both commands, and the standard counts. */
  @ParameterizedTest
  @ValueSource(strings = {"Label width|'300 mm", "Label height|'0.1 mm", "Fill factor|7"})
  void aSettingOutOfRangeStopsNothing(String setting) throws IOException {
    Path odd = Books.season().plus("Settings", setting).write(folder.resolve("odd setting.xlsx"));
    Command check = Command.run("check", odd, "--as-of", "2026-06-30");
    assertEquals(0, check.exitCode(), check.toString());
    assertTrue(check.out().contains("error, Settings B4: "), check.out());
    assertTrue(check.out().contains("is not allowed: it must be"), check.out());
    Command analysed = analyse(odd, "--as-of", "2026-06-30");
    assertEquals(0, analysed.exitCode(), analysed.toString());
    String checks = Files.readString(reports.resolve("odd setting/input-checks.csv"));
    assertTrue(checks.contains("error,Settings,B4,"), checks);
  }

  /** Findings made long after reading name the cell too, wherever its column stands. */
  @Test
  void aFindingNamesTheCellOfTheKeyThatIsWrong() {
    Path odd =
        Books.season()
            .with("Events", "Event|Water|Date|Hours|Cover\nCup||2026-07-04|8|ice")
            .with("Event plan", "Event|Colours|Style|Hours\nCup|Gold|Crank|4\nCup|Green|Worm|4")
            .with("Loads", "Load|Kind|Weight|From transom\nAnn|person|9000|40")
            .write(folder.resolve("odd.xlsx"));
    String said = Command.run("check", odd, "--as-of", "2026-06-30").out();
    assertTrue(said.contains("warning, Event plan B2: colour 'Gold' of 'Crank'"), said);
    assertTrue(said.contains("warning, Loads C2: person 'Ann' weighs"), said);
    assertTrue(said.contains("note, Events E2: no trip was logged in the cover 'ice'"), said);
  }

  @Test
  void chanceInPercentIsReadWithAWarning() throws IOException {
    Command command = analyse(book, "--chance", "95", "--as-of", "2026-06-30");
    assertEquals(0, command.exitCode(), command.error());
    assertTrue(command.error().contains("--chance 95 is read as percent"), command.error());
    List<String> checks = Files.readAllLines(reports.resolve("season/input-checks.csv"));
    assertTrue(
        checks.stream().anyMatch(l -> l.matches("warning,,,the chance 95 looks .*0\\.95")),
        checks.toString());
  }

  /** The folder named like the workbook may be the angler's own. */
  @Test
  void reportsLeaveTheFilesOfOthersAlone() throws IOException {
    Path mine = Files.createDirectories(folder.resolve("season"));
    Path log = Files.writeString(mine.resolve("phone.csv"), "Date,Trip\n");
    Path prices = Files.writeString(mine.resolve("buy-list.csv"), "Part,Price\n");
    Command command = Command.run("analyse", book, "--reports", folder);
    assertEquals(0, command.exitCode(), command.toString());
    assertEquals("Date,Trip\n", Files.readString(log));
    assertEquals("Part,Price\n", Files.readString(prices));
    assertTrue(Files.exists(mine.resolve("buy-list (2).csv")));
    assertTrue(command.error().contains("buy-list.csv was not written by"), command.error());
  }

  /** Java asks for the folder of temporary files once, so another process must find it missing. */
  @Test
  void aMissingFolderForTemporaryFilesIsNamed() throws Exception {
    Path missing = folder.resolve("no such folder");
    Process run =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.io.tmpdir=" + missing,
                "-cp",
                System.getProperty("java.class.path"),
                "sparewell.Main",
                "analyse",
                book.toString(),
                "--reports",
                reports.toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertFalse(said.contains("the CSV files cannot be written"), said);
    assertTrue(run.waitFor() == 0 || said.contains("no such folder, cannot be written to"), said);
  }

  @Test
  void aFolderToWriteToIsNamedAsSuch() throws IOException {
    byte[] before = Files.readAllBytes(book);
    refused(
        analyse(book, "--out", Files.createDirectories(folder.resolve("there"))),
        "is a folder",
        folder.resolve("there").resolve("season.xlsx").toString());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("season.xlsx"), files());
  }

  @Test
  void helpAndVersion() {
    for (String command : List.of("", "analyse", "check", "new", "import", "watch", "help")) {
      Object[] help =
          command.isEmpty() ? new Object[] {"--help"} : new Object[] {command, "--help"};
      Command asked = Command.run(help);
      assertEquals(0, asked.exitCode());
      assertTrue(asked.out().startsWith("Usage: sparewell"), asked.out());
      assertFalse(asked.out().contains("\u001b"), "no colours");
      assertTrue(asked.out().lines().allMatch(line -> line.length() <= 80), asked.out());
      Object[] version =
          command.isEmpty() ? new Object[] {"--version"} : new Object[] {command, "--version"};
      assertTrue(Command.run(version).out().startsWith("sparewell "));
    }
  }

  @Test
  void analyseWritesWorkbookBackupAndReports() throws IOException {
    byte[] before = Files.readAllBytes(book);
    Command command = analyse(book, "--as-of", "2026-06-30", "--budget", "40");
    assertEquals(0, command.exitCode(), command.error());
    assertEquals("", command.error());
    assertTrue(command.out().contains("Do this, in this order"), command.out());
    assertTrue(command.out().contains("Backup of what it was: "), command.out());
    assertTrue(Files.exists(reports.resolve("season/spares.csv")));
    Path backup =
        folder.resolve(
            files().stream().filter(f -> f.startsWith("season-backups/")).findFirst().get());
    assertTrue(
        backup.getFileName().toString().matches("season \\d{4}-\\d\\d-\\d\\d \\d{6}\\.xlsx"));
    assertArrayEquals(before, Files.readAllBytes(backup));
  }

  @Test
  void quietPrintsNothing() {
    Command command = analyse(book, "--quiet");
    assertEquals(0, command.exitCode());
    assertEquals("", command.out() + command.error());
    assertEquals("", Command.run("check", book, "--quiet").out());
    refused(Command.run("check", folder.resolve("none.xlsx"), "--quiet"), "there is no such file");
  }

  @Test
  void strictReturnsOneForErrorsOnly() {
    Path bad = bad("bad.xlsx");
    assertEquals(0, analyse(book, "--strict").exitCode());
    assertEquals(1, analyse(bad, "--strict").exitCode());
    assertEquals(0, analyse(bad).exitCode());
    assertEquals(1, Command.run("check", bad, "--strict").exitCode());
    assertEquals(0, Command.run("check", bad).exitCode());
    assertEquals(1, analyse(book, bad, "--strict").exitCode());
  }

  @Test
  void checkWritesNothingAtAll() throws IOException {
    Path bad = bad("bad.xlsx");
    byte[] before = Files.readAllBytes(bad);
    Command command = Command.run("check", book, bad);
    assertEquals(0, command.exitCode());
    assertTrue(command.out().contains("error, Losses E3: 'minus one' in Lost"), command.out());
    assertTrue(command.out().contains("Nothing was written."), command.out());
    assertArrayEquals(before, Files.readAllBytes(bad));
    assertEquals(List.of("bad.xlsx", "season.xlsx"), files());
  }

  @Test
  void aWorkbookWithoutOurSheetsIsToldSoOnce() {
    Path other = Books.empty().with("Sheet1", "Budget|2026").write(folder.resolve("other.xlsx"));
    Command command = analyse(other);
    refused(command, "sparewell new");
    assertEquals(1, command.error().lines().count(), command.error());
  }

  @Test
  void aWorkbookWithoutCommandIsTakenForOne() {
    usage(Command.run(book), "sparewell analyse " + book);
    usage(Command.run("nope.xlsx"), "sparewell analyse nope.xlsx");
  }

  @Test
  void helpIsACommandToo() {
    assertEquals(Command.run("--help"), Command.run("help"));
    assertEquals(Command.run("analyse", "--help"), Command.run("help", "analyse"));
    usage(Command.run("help", "frob"), "no command 'frob'");
  }

  /** What comes last stays on the screen: the errors, and how many there are of what. */
  @Test
  void theGravestFindingsComeLast() {
    Path odd =
        Books.season()
            .plus("Losses", "T1|Crank|'3/8|Red|minus one|snag|no\nT1|Wrm|||1||")
            .plus("Settings", "Chance wanted|95")
            .write(folder.resolve("odd.xlsx"));
    List<String> lines = Command.run("check", odd).out().lines().toList();
    List<String> order = lines.stream().map(l -> l.split("[,:]")[0]).distinct().toList();
    assertEquals(List.of("note", "warning", "error", odd.toString()), order);
  }

  /** No word is broken, whatever the terminal's width. */
  @ParameterizedTest
  @ValueSource(ints = {40, 100})
  void linesAreBrokenBetweenWords(int width) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    Console console = new Console(stream, stream, StandardCharsets.UTF_8, false, width);
    Path demo = folder.resolve("demo.xlsx");
    assertEquals(0, RootCommand.execute(console, "new", "" + demo, "--demo"));
    assertEquals(0, RootCommand.execute(console, "check", "" + bad("bad.xlsx")));
    assertEquals(0, RootCommand.execute(console, "analyse", "" + demo, "--reports", "" + reports));
    List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
    for (String line : lines) {
      assertTrue(line.length() <= width || !line.strip().contains(" "), line);
    }
    assertTrue(lines.contains(""), "blank lines stay");
  }

  /** A refused workbook, a good one, and the end, in a process of its own. */
  @Test
  void watchAnalysesWhatIsSavedAndEndsCleanly() throws Exception {
    Path watched = Files.createDirectory(folder.resolve("watched"));
    Process run =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "sparewell.Main",
                "watch",
                watched.toString(),
                "--reports",
                reports.toString())
            .redirectErrorStream(true)
            .start();
    try (BufferedReader said =
        new BufferedReader(new InputStreamReader(run.getInputStream(), StandardCharsets.UTF_8))) {
      assertTrue(said.readLine().startsWith("Watching "));
      Files.writeString(watched.resolve("bad.xlsx"), "no workbook");
      assertTrue(said.readLine().matches("[\\d:]{8} bad.xlsx: refused: .*"));
      Files.copy(book, watched.resolve("good.xlsx"));
      String line = said.readLine();
      assertTrue(line.matches("[\\d:]{8} good.xlsx: \\d+ to do; \\d+ errors?, .*"), line);
      assertTrue(Files.exists(reports.resolve("good/spares.csv")));
      run.toHandle().destroy(); // as Ctrl-C does, and our reader stays open
      assertEquals("Stopped.", said.readLine(), "and nothing of its own write");
      run.waitFor();
    } finally {
      run.destroyForcibly();
    }
  }

  @Test
  void theWidthOfATerminal() {
    assertEquals(60, TerminalWidth.of("60", false));
    assertEquals(30, TerminalWidth.of("3", false));
    assertEquals(Integer.MAX_VALUE, TerminalWidth.of(null, false));
    assertEquals(Integer.MAX_VALUE, TerminalWidth.of("wide", false));
  }

  @Test
  void whatIsNoWorkbook() throws IOException {
    refused(analyse(folder.resolve("none.xlsx")), "there is no such file");
    refused(analyse(Files.writeString(folder.resolve("text.xlsx"), "not one")));
    refused(analyse(Files.createFile(folder.resolve("empty.xlsx"))));
    refused(
        analyse(
            Books.season().without("Stock").without("Boxes").write(folder.resolve("lacks.xlsx"))),
        "'Stock' is missing",
        "'Boxes' is missing");
  }

  @Test
  void eachOfSeveralIsJudgedAloneAndTheWorstCodeReturned() {
    Command command = analyse(folder.resolve("none.xlsx"), book, bad("bad.xlsx"), "--strict");
    assertEquals(3, command.exitCode());
    assertTrue(command.out().contains("2 of 3 workbooks done."), command.out());
    assertTrue(Files.exists(reports.resolve("season/spares.csv")));
    assertTrue(Files.exists(reports.resolve("bad/spares.csv")));
  }

  @Test
  void outTakesOneWorkbook() throws IOException {
    Path out = folder.resolve("answer.xlsx");
    byte[] before = Files.readAllBytes(book);
    usage(analyse(book, bad("bad.xlsx"), "--out", out), "--out takes one workbook");
    assertEquals(0, analyse(book, "--out", out).exitCode());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertFalse(files().stream().anyMatch(f -> f.contains("-backups")), files().toString());
    assertEquals(0, analyse(book, "--out", out).exitCode());
    assertTrue(files().stream().anyMatch(f -> f.startsWith("answer-backups/answer ")));
    refused(analyse(book, "--out", folder.resolve("answer.csv")), "must end in .xlsx");
  }

  @Test
  void foldersStandForTheirWorkbooks() throws IOException {
    Path inside = Files.createDirectory(folder.resolve("all"));
    Files.copy(book, inside.resolve("b.xlsx"));
    Files.copy(book, inside.resolve("A.XLSX"));
    Files.writeString(inside.resolve("~$b.csv"), "");
    Files.writeString(inside.resolve("note.txt"), "");
    Command command = analyse(inside, inside.resolve("b.xlsx"));
    assertEquals(0, command.exitCode(), command.error());
    assertTrue(command.out().contains("2 of 2 workbooks done."), command.out());
    assertTrue(Files.exists(reports.resolve("A/spares.csv")));
    Path empty = Files.createDirectory(folder.resolve("empty"));
    usage(analyse(empty), "There is no workbook");
  }

  @Test
  void workbooksOfOneNameGetFoldersOfTheirOwn() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    Files.copy(book, other.resolve("Season.xlsx"));
    Files.copy(book, other.resolve("season (2).xlsx"));
    Command command = analyse(book, other.resolve("Season.xlsx"), other.resolve("season (2).xlsx"));
    assertEquals(0, command.exitCode(), command.error());
    for (String name : List.of("season", "Season (2)", "season (2) (2)")) {
      assertTrue(Files.exists(reports.resolve(name).resolve("spares.csv")), files().toString());
    }
  }

  @Test
  void reportsThatCannotBeWrittenLeaveTheWorkbookAsItWas() throws IOException {
    byte[] before = Files.readAllBytes(book);
    Files.createDirectories(reports.getParent());
    Files.writeString(reports, "in the way");
    refused(analyse(book), "cannot be written into", "The workbook is as it was");
    assertArrayEquals(before, Files.readAllBytes(book));
  }

  @Test
  void lockedOrProtected() throws IOException {
    Files.writeString(folder.resolve(".~lock.season.xlsx#"), "");
    refused(analyse(book), "has it open", "delete .~lock.season.xlsx#");
    assertEquals(0, Command.run("check", book).exitCode());
    Path locked =
        Books.season().touch(workbook -> workbook.lockStructure()).write(folder.resolve("p.xlsx"));
    refused(analyse(locked), "structure is protected", "Take the protection");
  }

  @ParameterizedTest
  @CsvSource({
    "us, false, blank-us",
    "metric, false, blank-metric",
    "US, true, demo",
    "Metric, true, demo-metric"
  })
  void newMakesTheKeptWorkbook(String units, boolean demo, String kept) throws IOException {
    Path fresh = folder.resolve("fresh.xlsx");
    Command run =
        demo
            ? Command.run("new", fresh, "--units", units, "--demo")
            : Command.run("new", fresh, "--units", units);
    assertEquals(0, run.exitCode(), run.error());
    assertArrayEquals(
        Files.readAllBytes(Path.of("workbook-templates", kept + ".xlsx")),
        Files.readAllBytes(fresh));
  }

  @Test
  void newNeverOverwrites() throws IOException {
    Path fresh = folder.resolve("fresh.xlsx");
    assertEquals(0, Command.run("new", fresh, "--units", "METRIC").exitCode());
    byte[] before = Files.readAllBytes(fresh);
    refused(Command.run("new", fresh), "is there already");
    assertArrayEquals(before, Files.readAllBytes(fresh));
    refused(Command.run("new", folder.resolve("nowhere/fresh.xlsx")), "could not be written");
  }

  @Test
  void importAddsRowsOnce() throws IOException {
    Path csv = Files.writeString(folder.resolve("l.csv"), "Trip,Style,Lost\nT1,Worm,2\n");
    Command command = Command.run("import", book, "--losses", csv, "--dry-run");
    assertTrue(command.out().contains("1 row would be added"), command.toString());
    command = Command.run("import", book, "--losses", csv);
    assertEquals(0, command.exitCode(), command.error());
    assertTrue(command.out().contains("Losses: 1 row added from"), command.out());
    command = Command.run("import", book, "--losses", csv);
    assertTrue(command.out().contains("the workbook is as it was"), command.out());
    assertEquals("", Command.run("import", book, "--losses", csv, "--quiet").out());
    refused(Command.run("import", book, "--trips", folder.resolve("none.csv")), "no such file");
    refused(Command.run("import", folder.resolve("none.xlsx"), "--losses", csv), "no such file");
  }

  @Test
  void aPlainTerminalGetsPlainText() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream error = new ByteArrayOutputStream();
    Console console =
        new Console(new PrintStream(out), new PrintStream(error), StandardCharsets.US_ASCII, true);
    console.say("3 × ½ … “jig” – Rosé\u001b[31m");
    assertEquals(
        "3 x  1/2 ... \"jig\" - Ros?[31m" + System.lineSeparator(),
        out.toString(StandardCharsets.US_ASCII));
    console.progress(1, 2, "workbooks");
    assertTrue(error.toString(StandardCharsets.US_ASCII).contains("[##########----------] 1 of 2"));
  }

  @Test
  void noProgressWhereNobodyWatches() {
    ByteArrayOutputStream error = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(new ByteArrayOutputStream()),
            new PrintStream(error),
            StandardCharsets.UTF_8,
            false);
    console.progress(1, 2, "workbooks");
    console.clearProgress();
    assertEquals(0, error.size());
  }

  @Test
  void severalWorkbooksEndInATable() {
    Command command = analyse(folder.resolve("none.xlsx"), book);
    List<String> lines = command.out().lines().toList();
    List<String> table = lines.subList(lines.size() - 4, lines.size());
    assertTrue(table.get(0).matches("Workbook +Result +To do, or what is wrong"), table.get(0));
    assertTrue(
        table.get(1).matches(".*none\\.xlsx +refused +there is no such file.*"), table.get(1));
    assertTrue(table.get(2).matches(".*season\\.xlsx +done +\\d+ to do; .*"), table.get(2));
    assertTrue(table.stream().allMatch(line -> line.length() <= 80), table.toString());
  }

  @Test
  void soManyBackupsStayAsAreAskedFor() throws Exception {
    Path backups = folder.resolve("season-backups");
    for (int run = 0; run < 3; run++) {
      assertEquals(0, analyse(book, "--keep-backups", "2").exitCode());
    }
    try (Stream<Path> kept = Files.list(backups)) {
      assertEquals(2, kept.count());
    }
    usage(analyse(book, "--keep-backups", "0"), "--keep-backups must be at least 1");
    usage(analyse(book, "--keep-backups", "few"), "--keep-backups");
    Path losses = Files.writeString(folder.resolve("l.csv"), "Trip,Style,Lost\n");
    usage(
        Command.run("import", book, "--losses", losses, "--keep-backups", "0"),
        "--keep-backups must be at least 1");
  }

  @Test
  void aSignatureIsDroppedWhereAskedFor() throws Exception {
    Path signed = SignedBook.of(book, folder.resolve("signed.xlsx"));
    byte[] before = Files.readAllBytes(signed);
    refused(analyse(signed), "digitally signed", "--drop-signature");
    assertArrayEquals(before, Files.readAllBytes(signed));
    Command dropped = analyse(signed, "--drop-signature");
    assertEquals(0, dropped.exitCode(), dropped.error());
    assertTrue(dropped.out().contains("signature"), dropped.out());
    try (ZipFile zip = new ZipFile(signed.toFile())) {
      assertTrue(zip.stream().noneMatch(e -> e.getName().contains("signature")));
      for (String part : List.of("_rels/.rels", "[Content_Types].xml")) {
        String text =
            new String(
                zip.getInputStream(zip.getEntry(part)).readAllBytes(), StandardCharsets.UTF_8);
        assertFalse(text.contains("signature"), text);
      }
    }
    assertTrue(
        Files.readString(reports.resolve("signed/input-checks.csv")).contains("digitally signed"));
    assertEquals(0, analyse(signed).exitCode());
  }
}
