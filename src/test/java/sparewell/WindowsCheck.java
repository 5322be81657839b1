package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The launcher of Windows, run by Wine 8 with a java.exe that only writes down what it was given.
 * Needs Wine and {@code x86_64-w64-mingw32-gcc}; a line is started as Explorer starts it when
 * something is dropped on the file (from memory): {@code cmd.exe /c ""launcher" words"}, names with
 * a blank in quotes. Wine 8 drops percent signs that a word brought in, where Windows expands a
 * line once (from memory): a file of the one line {@code echo %~1}, too, says "50 off" of "50%
 * off", and of "a%1" Wine ends in a fault of its own. It knows no {@code cmdcmdline} either. So
 * names with a percent sign and the window that stays open are not seen here.
 */
class WindowsCheck {
  private static final int STUB_CODE = 7;

  private static Path folder;
  private static Path launcher;
  private static final Map<String, String> USUAL = new HashMap<>();

  private final Path log = folder.resolve("log.txt");

  @BeforeAll
  static void setUp() throws Exception {
    folder = Files.createTempDirectory("windows").toRealPath();
    Path java = Files.createDirectories(folder.resolve("Java 17/bin")).resolve("java.exe");
    compile("java.c", java);
    compile("drop.c", folder.resolve("drop.exe"));
    Path home = Files.createDirectories(folder.resolve("Köder & mehr (neu)"));
    Files.writeString(home.resolve("sparewell.jar"), "not read");
    launcher = home.resolve("sparewell.cmd");
    Files.writeString(
        launcher, Files.readString(Path.of("src/main/dist/sparewell.cmd")).replace("\n", "\r\n"));
    USUAL.put("WINEPREFIX", folder.resolve("wine").toString());
    USUAL.put("WINEDEBUG", "-all");
    USUAL.put("DISPLAY", "");
    USUAL.put("LC_ALL", "C.UTF-8");
    USUAL.put("STUB_LOG", windows(folder.resolve("log.txt")));
    USUAL.put("WINEPATH", windows(java.getParent()));
    for (String name :
        List.of("My tackle.xlsx", "Köder.xlsx", "a b & c.xlsx", "wow!.xlsx", "(old) ^ 2,5.xlsx")) {
      Files.writeString(folder.resolve(name), "not read");
    }
    Files.createDirectories(folder.resolve("all my books"));
  }

  @AfterAll
  static void tidy() throws Exception {
    new ProcessBuilder("sh", "-c", "WINEPREFIX='" + USUAL.get("WINEPREFIX") + "' wineserver -w")
        .start()
        .waitFor(60, TimeUnit.SECONDS);
    try (Stream<Path> left = Files.walk(folder)) {
      for (Path path : left.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  @BeforeEach
  void forget() throws IOException {
    Files.deleteIfExists(log);
  }

  private record Run(int code, String out, List<String> words) {}

  @ParameterizedTest
  @ValueSource(
      strings = {"My tackle.xlsx", "Köder.xlsx", "a b & c.xlsx", "wow!.xlsx", "(old) ^ 2,5.xlsx"})
  void aWorkbookDroppedIsAnalysed(String name) throws Exception {
    Run run = run(USUAL, dropped(folder.resolve(name)));
    assertEquals(STUB_CODE, run.code(), run.out());
    assertEquals(
        List.of(
            "-jar",
            windows(launcher.resolveSibling("sparewell.jar")),
            "analyse",
            windows(folder.resolve(name))),
        tail(run.words(), 4));
    assertTrue(run.words().contains("-XX:TieredStopAtLevel=1"));
  }

  @Test
  void aFolderOrSeveralWorkbooksAreAnalysedWithTheSameFlags() throws Exception {
    Path books = folder.resolve("all my books");
    Run one = run(USUAL, dropped(books));
    assertEquals(List.of("analyse", windows(books)), tail(one.words(), 2));
    assertTrue(one.words().contains("-XX:TieredStopAtLevel=1"));
    forget();
    Path first = folder.resolve("My tackle.xlsx");
    Path second = folder.resolve("Köder.xlsx");
    Run two = run(USUAL, dropped(first) + " " + dropped(second));
    assertEquals(
        List.of("analyse", windows(first), windows(second)), tail(two.words(), 3), two.out());
    assertTrue(two.words().contains("-XX:TieredStopAtLevel=1"));
  }

  @Test
  void aWatchedFolderIsAnalysedWithTheSameFlags() throws Exception {
    Run run = run(USUAL, "watch " + dropped(folder.resolve("all my books")));
    assertTrue(run.words().contains("-XX:TieredStopAtLevel=1"));
  }

  @Test
  void theSecondStartUsesTheArchiveOfTheFirst() throws Exception {
    run(USUAL, dropped(folder.resolve("Köder.xlsx")));
    forget();
    Run again = run(USUAL, dropped(folder.resolve("Köder.xlsx")));
    assertTrue(
        again.words().stream().anyMatch(w -> w.startsWith("-XX:SharedArchiveFile=")),
        again.words().toString());
  }

  /** A drop of such a name comes without quotes, and the command line ends at the ampersand. */
  @Test
  void aNameCutOffAtAnAmpersandIsToldAndItsRestIsNotRun() throws Exception {
    Path ran = folder.resolve("ran.txt");
    Run run = run(USUAL, windows(folder.resolve("a&echo")) + ">" + windows(ran));
    assertEquals(3, run.code());
    assertTrue(run.out().contains("cut off at an ampersand"), run.out());
    assertFalse(Files.exists(ran));
    assertEquals(List.of(), run.words());
  }

  @Test
  void commandsAndOptionsArePassedOnAsTheyAre() throws Exception {
    Files.createDirectories(folder.resolve("new"));
    assertEquals(
        List.of("new", "mein Köder.xlsx"), tail(run(USUAL, "new \"mein Köder.xlsx\"").words(), 2));
    forget();
    assertEquals(List.of("--help"), tail(run(USUAL, "--help").words(), 1));
    forget();
    Run alone = run(USUAL, "");
    assertEquals(windows(launcher.resolveSibling("sparewell.jar")), tail(alone.words(), 1).get(0));
  }

  @Test
  void javaHomeWins() throws Exception {
    Map<String, String> home = new HashMap<>(USUAL);
    home.remove("WINEPATH");
    home.put("JAVA_HOME", windows(folder.resolve("Java 17")));
    assertEquals(STUB_CODE, run(home, dropped(folder.resolve("Köder.xlsx"))).code());
  }

  @Test
  void noJavaAndOldJavaAreTold() throws Exception {
    Map<String, String> none = new HashMap<>(USUAL);
    none.remove("WINEPATH");
    Run without = run(none, dropped(folder.resolve("Köder.xlsx")));
    assertEquals(3, without.code());
    assertTrue(without.out().contains("needs Java 17 or newer: install"), without.out());
    Map<String, String> old = new HashMap<>(USUAL);
    old.put("STUB_OLD", "yes");
    Path java = Files.createDirectories(folder.resolve("Java 11")).resolve("java.exe");
    Files.copy(folder.resolve("Java 17/bin/java.exe"), java);
    Files.writeString(java, "\n", StandardOpenOption.APPEND); // another Java, without an archive
    old.put("WINEPATH", windows(java.getParent()));
    Run run = run(old, dropped(folder.resolve("Köder.xlsx")));
    assertEquals(3, run.code());
    assertTrue(run.out().contains("older or does not start"), run.out());
  }

  private static List<String> tail(List<String> words, int count) {
    return words.subList(Math.max(0, words.size() - count), words.size());
  }

  private static String windows(Path path) {
    return "Z:" + path.toString().replace('/', '\\');
  }

  private static String dropped(Path path) {
    return path.toString().contains(" ") ? "\"" + windows(path) + "\"" : windows(path);
  }

  private Run run(Map<String, String> environment, String words) throws Exception {
    Path line = folder.resolve("line.txt");
    Files.writeString(line, "cmd.exe /c \"\"" + windows(launcher) + "\" " + words + "\"");
    ProcessBuilder builder =
        new ProcessBuilder("wine", windows(folder.resolve("drop.exe")), windows(line))
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectInput(Path.of("/dev/null").toFile())
            .redirectOutput(folder.resolve("out.txt").toFile());
    builder.environment().remove("JAVA_HOME");
    builder.environment().putAll(environment);
    Process process = builder.start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS));
    return new Run(
        process.exitValue(),
        Files.readString(folder.resolve("out.txt"), StandardCharsets.ISO_8859_1),
        Files.exists(log)
            ? Files.readAllLines(log).stream().filter(l -> !l.isEmpty()).toList()
            : List.of());
  }

  private static void compile(String source, Path program) throws Exception {
    Process process =
        new ProcessBuilder(
                "x86_64-w64-mingw32-gcc",
                "-municode",
                "-O1",
                "-o",
                program.toString(),
                "src/test/resources/windows/" + source)
            .inheritIO()
            .start();
    assertEquals(0, process.waitFor());
  }
}
