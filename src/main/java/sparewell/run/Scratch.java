package sparewell.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/** A folder for the temporary files of one run, in the system's own; it goes with the run. */
final class Scratch implements AutoCloseable {
  private final Path folder;
  private final String ending;
  private int files;

  Scratch(WorkbookPackage book) throws WorkbookRefused {
    this.ending = book.macros() ? ".xlsm" : ".xlsx";
    try {
      this.folder = Files.createTempDirectory("sparewell");
    } catch (IOException full) {
      throw WorkbookRefused.of(book.file(), "no temporary", System.getProperty("java.io.tmpdir"));
    }
  }

  /** A name for a new file of the workbook's kind. */
  Path file() {
    return folder.resolve(++files + ending);
  }

  @Override
  public void close() throws IOException {
    for (int n = 1; n <= files; n++) {
      Files.deleteIfExists(folder.resolve(n + ending));
    }
    Files.deleteIfExists(folder);
  }
}
