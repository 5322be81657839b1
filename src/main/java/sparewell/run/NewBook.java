package sparewell.run;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/** Makes a workbook to begin with. */
public final class NewBook {
  private NewBook() {}

  /** Makes a workbook, empty or with the invented season; never overwrites one. */
  public static Outcome make(Path file, boolean metric, boolean demo) {
    if (!file.toString().toLowerCase(java.util.Locale.ROOT).endsWith(".xlsx")) {
      return Outcome.refused(file, "the name of a new workbook must end in .xlsx.");
    }
    String blank = metric ? "blank-metric.xlsx" : "blank-us.xlsx";
    String filled = metric ? "demo-metric.xlsx" : "demo.xlsx";
    try {
      Files.write(
          file,
          template(demo ? filled : blank),
          StandardOpenOption.CREATE_NEW,
          StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException taken) {
      return Outcome.refused(
          file, "it is there already and was left as it is. Choose another name.");
    } catch (NoSuchFileException missing) {
      return Outcome.refused(
          file, "it could not be written: its folder is not there. Make it first.");
    } catch (IOException disk) {
      return Outcome.refused(
          file,
          "it could not be written. Check that its folder may be written to and the disk has"
              + " space.");
    }
    return Outcome.done(
        file,
        "made",
        List.of(
            "Made " + file + ".",
            demo
                ? "It holds an invented season. Next: sparewell analyse " + file
                : "Open it, follow 'Read me first', fill it in. Next: sparewell analyse " + file));
  }

  /** Content of a workbook that the build puts into the jar, by its file's name. */
  static byte[] template(String name) {
    try (InputStream kept = NewBook.class.getResourceAsStream("/sparewell/workbooks/" + name)) {
      if (kept == null) {
        throw new IllegalArgumentException("no workbook of that name is carried along: " + name);
      }
      return kept.readAllBytes();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
