package sparewell.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.AnalysedDemo;
import sparewell.Command;
import sparewell.workbook.Books;

/** Lines that commands print. */
class PrintedTest extends CommandFixture {
  @Test
  void quietPrintsNothing() {
    Command command = analyse(book, "--quiet");
    assertEquals(0, command.exitCode());
    assertEquals("", command.out() + command.error());
    assertEquals("", Command.run("check", book, "--quiet").out());
    refused(Command.run("check", folder.resolve("none.xlsx"), "--quiet"), "there is no such file");
  }

  @Test
  void aWorkbookWithoutOurSheetsIsToldSoOnce() {
    Path other = Books.empty().with("Sheet1", "Budget|2026").write(folder.resolve("other.xlsx"));
    Command command = analyse(other);
    refused(command, "sparewell new");
    assertEquals(1, command.error().lines().count(), command.error());
  }

  /** The errors and the counts come last, so that they stay on the screen. */
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
  @ValueSource(ints = {30, 40, 60, 100})
  void linesAreBrokenBetweenWords(int width) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    Console console = new Console(stream, stream, StandardCharsets.UTF_8, false, width);
    assertEquals(0, RootCommand.execute(console, "check", "" + bad("bad.xlsx")));
    console.say(AnalysedDemo.said());
    List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
    for (String line : lines) {
      assertTrue(line.length() <= width || !line.strip().contains(" "), line);
    }
    assertTrue(lines.contains(""), "blank lines stay");
  }

  @Test
  void theWidthOfATerminal() {
    assertEquals(60, Console.width("60", false));
    assertEquals(30, Console.width("3", false));
    assertEquals(Integer.MAX_VALUE, Console.width(null, false));
    assertEquals(Integer.MAX_VALUE, Console.width("wide", false));
  }

  @Test
  void aPlainTerminalGetsPlainText() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream error = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(out),
            new PrintStream(error),
            StandardCharsets.US_ASCII,
            true,
            Integer.MAX_VALUE);
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
            false,
            Integer.MAX_VALUE);
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
}
