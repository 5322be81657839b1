package sparewell.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An analysis whose result is thrown away. The first one in a program takes longest; rehearsed
 * while nobody waits, the first answer costs about a fifth of a cold start's CPU for the same
 * workbook saved again, a quarter where a trip was added.
 */
public final class Rehearsal {
  private Rehearsal() {}

  /** Analyses a workbook, which stays as it is, into a temporary folder. */
  public static void of(Path book, RunOptions options) {
    try {
      Path folder = Files.createTempDirectory("sparewell");
      try {
        Path copy = folder.resolve(book.getFileName());
        Batch.analyse(List.of(book), into(copy, options), done -> {});
      } finally {
        delete(folder);
      }
    } catch (IOException noRoom) {
      // Then the first answer takes its time.
    }
  }

  private static RunOptions into(Path copy, RunOptions options) {
    return new RunOptions(
        options.now(),
        Optional.of(copy),
        copy.getParent(),
        options.reading(),
        options.strict(),
        options.backupsKept(),
        options.dropSignature(),
        options.columns(),
        options.experience(),
        options.version());
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> inside = Files.walk(folder)) {
      for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
