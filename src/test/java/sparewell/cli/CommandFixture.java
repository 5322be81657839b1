package sparewell.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.workbook.Books;

/**
 * A season's workbook in a folder of its own, and checks of what a command printed and returned.
 */
abstract class CommandFixture {
  @TempDir Path folder;
  Path book;

  Path reports;

  @BeforeEach
  void make() throws IOException {
    folder = folder.toRealPath();
    book = Books.season().write(folder.resolve("season.xlsx"));
    reports = folder.resolve("out/reports");
  }

  Path bad(String name) {
    return Books.season()
        .plus("Losses", "T1|Crank|'3/8|Red|minus one|snag|no")
        .write(folder.resolve(name));
  }

  Command analyse(Object... more) {
    Object[] all =
        Stream.concat(Stream.of("analyse", "--reports", reports), Arrays.stream(more)).toArray();
    return Command.run(all);
  }

  List<String> files() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .map(p -> folder.relativize(p).toString())
          .sorted()
          .toList();
    }
  }

  static void usage(Command command, String... because) {
    assertEquals(2, command.exitCode(), command.toString());
    assertEquals("", command.out());
    for (String part : because) {
      assertTrue(command.error().contains(part), command.error());
    }
    assertTrue(command.error().lines().count() <= 4, command.error());
    assertTrue(command.error().contains("--help'"), command.error());
    assertFalse(command.error().contains("Exception"), command.error());
  }

  void refused(Command command, String... because) {
    assertEquals(3, command.exitCode(), command.toString());
    for (String part : because) {
      assertTrue(command.error().contains(part), command.error());
    }
    assertFalse(command.error().contains("Exception"), command.error());
  }
}
