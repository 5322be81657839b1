package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import sparewell.workbook.Books;

/** Workbooks after a first run over them, which is made once for all tests that start from one. */
public final class Analysed {
  private static final Map<String, byte[]> DONE = new ConcurrentHashMap<>();

  private Analysed() {}

  /** Writes the workbook as that run leaves it; its CSV files and its backup are not written. */
  public static Path write(Books books, Path file) {
    byte[] bytes =
        DONE.computeIfAbsent(file.getFileName() + " " + books, key -> analysed(books, file));
    try {
      return Files.write(file, bytes);
    } catch (IOException disk) {
      throw new UncheckedIOException(disk);
    }
  }

  private static byte[] analysed(Books books, Path file) {
    try {
      Path apart = Files.createTempDirectory(file.getParent(), "first");
      Path book = books.write(apart.resolve(file.getFileName()));
      Command run = Command.run("analyse", book, "--reports", apart);
      assertEquals(0, run.exitCode(), run.error());
      return Files.readAllBytes(book);
    } catch (IOException disk) {
      throw new UncheckedIOException(disk);
    }
  }
}
