package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launchers of Linux and macOS, with a java that only says what it was given. */
class LauncherTest {
  private static final String JAVA =
      """
      #!/bin/sh
      if [ "$OLD" = yes ] && [ "$*" != -version ]; then exit 1; fi
      for last; do :; done
      [ "$last" = --version ] && exit 0
      printf '%s\\n' "$@"
      exit 7
      """;

  @TempDir private Path folder;
  private Path launcher;

  private record Run(int code, List<String> lines) {}

  @BeforeEach
  void setUp() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")));
    Path home = Files.createDirectories(folder.resolve("Köder & mehr 100%"));
    launcher = program(home.resolve("sparewell"), Path.of("src/main/dist/sparewell"));
    program(home.resolve("sparewell.command"), Path.of("src/main/dist/sparewell.command"));
    Files.writeString(home.resolve("sparewell.jar"), "not read");
    Path java = Files.createDirectories(folder.resolve("java home/bin")).resolve("java");
    Files.writeString(java, JAVA);
    assertTrue(java.toFile().setExecutable(true));
  }

  private static Path program(Path to, Path from) throws IOException {
    Files.copy(from, to);
    assertTrue(to.toFile().setExecutable(true));
    return to;
  }

  private Run run(String input, Map<String, String> environment, String... words) throws Exception {
    ProcessBuilder builder = new ProcessBuilder(words).directory(folder.toFile());
    Path typed = Files.writeString(folder.resolve("typed.txt"), input);
    Path out = folder.resolve("out.txt");
    builder.environment().clear();
    builder.environment().putAll(environment);
    builder.environment().put("HOME", folder.toString());
    builder.environment().put("LC_ALL", "C.UTF-8");
    builder.environment().putIfAbsent("PATH", "/usr/bin:/bin");
    Process process =
        builder
            .redirectErrorStream(true)
            .redirectInput(typed.toFile())
            .redirectOutput(out.toFile())
            .start();
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    return new Run(process.exitValue(), Files.readAllLines(out));
  }

  private Map<String, String> java() {
    return Map.of("JAVA_HOME", folder.resolve("java home").toString());
  }

  private static List<String> tail(List<String> lines, int count) {
    return lines.subList(Math.max(0, lines.size() - count), lines.size());
  }

  @Test
  void aWorkbookAloneIsAnalysed() throws Exception {
    Files.writeString(folder.resolve("Müll & 50% off.xlsx"), "not read");
    Run run = run("", java(), "" + launcher, "Müll & 50% off.xlsx");
    assertEquals(7, run.code());
    assertEquals(
        List.of(
            "-jar",
            "" + launcher.resolveSibling("sparewell.jar"),
            "analyse",
            "Müll & 50% off.xlsx"),
        tail(run.lines(), 4));
  }

  @Test
  void aCommandIsNoFileOfThatName() throws Exception {
    for (String command : List.of("new", "post", "share", "watch", "check", "import")) {
      Files.createDirectories(folder.resolve(command));
      assertEquals(
          List.of(command, "mine.xlsx"),
          tail(run("", java(), "" + launcher, command, "mine.xlsx").lines(), 2));
    }
  }

  /** Measured: with the slower compiler too, 40 workbooks in one call take half as much again. */
  @Test
  void severalWorkbooksAreDoneBeforeTheSlowerCompilerPays() throws Exception {
    Files.createDirectories(folder.resolve("books"));
    String quick = "-XX:TieredStopAtLevel=1";
    assertTrue(run("", java(), "" + launcher, "watch", "books").lines().contains(quick));
    assertTrue(run("", java(), "" + launcher, "analyse", "books").lines().contains(quick));
  }

  @Test
  void oldJavaIsTold() throws Exception {
    Files.writeString(folder.resolve("mine.xlsx"), "not read");
    Run run =
        run(
            "",
            Map.of("JAVA_HOME", folder.resolve("java home").toString(), "OLD", "yes"),
            "" + launcher,
            "mine.xlsx");
    assertEquals(3, run.code());
    assertTrue(run.lines().toString().contains("older or does not start"), run.toString());
  }

  @Test
  void noJavaIsTold() throws Exception {
    Path tools = Files.createDirectories(folder.resolve("tools"));
    Run run = run("", Map.of("PATH", tools.toString()), "" + launcher, "mine.xlsx");
    assertEquals(3, run.code());
    assertTrue(run.lines().toString().contains("needs Java 17 or newer: install"), run.toString());
  }

  /** As the terminal of macOS types a name that is dragged in (from memory). */
  @Test
  void theOneForMacAsksForTheWorkbook() throws Exception {
    Files.writeString(folder.resolve("My tackle (new).xlsx"), "not read");
    Run run =
        run(
            "My\\ tackle\\ \\(new\\).xlsx \n\n",
            java(),
            "" + launcher.resolveSibling("sparewell.command"));
    assertEquals(7, run.code());
    assertTrue(run.lines().contains("analyse"), run.toString());
    assertTrue(run.lines().contains("My tackle (new).xlsx"), run.toString());
    Run none = run("\n\n", java(), "" + launcher.resolveSibling("sparewell.command"));
    assertTrue(none.lines().contains("--help"), none.toString());
    assertFalse(none.lines().contains("analyse"), none.toString());
  }
}
