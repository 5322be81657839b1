package sparewell.save.file;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.regex.Pattern;

/** The names of temporary files beside a workbook, and their removal after a crash. */
final class TemporaryFiles {
  private TemporaryFiles() {}

  /** Where the new workbook is written. */
  static Path fresh(Path workbook) {
    return workbook.resolveSibling("." + workbook.getFileName() + ".new.tmp");
  }

  /** What a run holds locked while it writes. */
  static Path lock(Path workbook) {
    return workbook.resolveSibling("." + workbook.getFileName() + ".lock.tmp");
  }

  /** Removes what an earlier run left; call it while the lock is held. */
  static void removeLeftovers(Path workbook) throws IOException {
    String full = workbook.getFileName().toString();
    Pattern ours =
        Pattern.compile(
            "\\.(?:"
                + Pattern.quote(full)
                + "|"
                + Pattern.quote(FileNames.stem(full))
                + ")\\.[^.]+\\.tmp");
    Path lock = lock(workbook);
    try (DirectoryStream<Path> files = Files.newDirectoryStream(workbook.getParent(), ".*.tmp")) {
      for (Path file : files) {
        if (ours.matcher(file.getFileName().toString()).matches()
            && !file.equals(lock)
            && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
          Files.deleteIfExists(file);
        }
      }
    }
  }
}
