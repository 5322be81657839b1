package sparewell.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.Command;
import sparewell.Main;
import sparewell.save.Programs;
import sparewell.workbook.Books;

/** Arguments that commands accept, and the exit codes they return. */
class CommandLineTest extends CommandFixture {
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

  /** A value out of range is a finding of both commands, and the standard counts. */
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

  /** A refused workbook, a good one, and the end, in a process of its own. */
  @Test
  void watchAnalysesWhatIsSavedAndEndsCleanly() throws Exception {
    Path watched = Files.createDirectory(folder.resolve("watched"));
    Path there = Files.copy(book, watched.resolve("there.xlsx"));
    Process run = Programs.java(Main.class, List.of(), "watch", watched, "--reports", reports);
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
      assertEquals(-1, Files.mismatch(book, there), "rehearsed, not written");
      assertFalse(Files.exists(reports.resolve("there")));
      run.waitFor();
    } finally {
      run.destroyForcibly();
    }
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
}
