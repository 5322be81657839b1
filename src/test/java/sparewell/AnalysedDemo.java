package sparewell;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The demo after a run over it, which is made once for all tests of a process. */
public final class AnalysedDemo {
  private static final Map<String, byte[]> FILES = new TreeMap<>();
  private static final String SAID = analysed();

  private AnalysedDemo() {}

  private static String analysed() {
    try {
      Path folder = Files.createTempDirectory("demo");
      Path book = folder.resolve("demo.xlsx");
      Files.copy(Path.of("workbook-templates/demo.xlsx"), book);
      Command run = Command.run("analyse", book, "--reports", folder.resolve("reports"));
      if (run.exitCode() != 0) {
        throw new IllegalStateException(run.error());
      }
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path file : all.filter(Files::isRegularFile).toList()) {
          FILES.put(folder.relativize(file).toString(), Files.readAllBytes(file));
          Files.delete(file);
        }
      }
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path left : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
          Files.delete(left);
        }
      }
      return run.out();
    } catch (IOException disk) {
      throw new UncheckedIOException(disk);
    }
  }

  /** The text that the run printed for the angler. */
  public static String said() {
    return SAID;
  }

  /**
   * Puts the workbook, its backup and {@code reports/demo} into a folder.
   *
   * @return the workbook, {@code demo.xlsx}
   */
  public static Path copy(Path folder) throws IOException {
    for (Map.Entry<String, byte[]> file : FILES.entrySet()) {
      Path to = folder.resolve(file.getKey());
      Files.createDirectories(to.getParent());
      Files.write(to, file.getValue());
    }
    return folder.resolve("demo.xlsx");
  }
}
