package sparewell.save.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import sparewell.ooxml.Fingerprint;

/** Dated copies beside the workbook, in a folder of their own. */
final class Backups {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HHmmss", Locale.ROOT);

  private final Path folder;
  private final String stem;
  private final String extension;

  Backups(Path workbook) {
    String name = workbook.getFileName().toString();
    this.extension = Replacement.extension(name);
    this.stem = name.substring(0, name.length() - extension.length());
    this.folder = workbook.resolveSibling(stem + "-backups");
  }

  /**
   * Copies the workbook as it is now, to the disk.
   *
   * @param expected what the workbook must be
   * @return the backup
   * @throws IOException where the disk fails, or the copy is not what was expected
   */
  Path make(Path workbook, Fingerprint expected, LocalDateTime now) throws IOException {
    Files.createDirectories(folder);
    Path fresh = folder.resolve("." + stem + extension + ".new.tmp");
    Files.deleteIfExists(fresh);
    try {
      Files.copy(workbook, fresh, StandardCopyOption.COPY_ATTRIBUTES);
      try (FileChannel channel = FileChannel.open(fresh, StandardOpenOption.READ)) {
        channel.force(true);
      }
      if (!Fingerprint.of(fresh).equals(expected)) {
        throw new IOException("the backup differs from the workbook");
      }
      Path backup = free(now);
      Files.move(fresh, backup, StandardCopyOption.ATOMIC_MOVE);
      Disk.syncFolder(folder);
      return backup;
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  private Path free(LocalDateTime now) {
    String name = stem + " " + STAMP.format(now);
    Path path = folder.resolve(name + extension);
    for (int n = 2; Files.exists(path, LinkOption.NOFOLLOW_LINKS); n++) {
      path = folder.resolve(name + " (" + n + ")" + extension);
    }
    return path;
  }

  /** Deletes the oldest backups of this workbook above a number; nothing else in the folder. */
  void keepLast(int kept) throws IOException {
    Pattern ours =
        Pattern.compile(
            Pattern.quote(stem)
                + " \\d{4}-\\d\\d-\\d\\d \\d{6}(?: \\(\\d+\\))?"
                + Pattern.quote(extension));
    List<Path> backups = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        if (ours.matcher(file.getFileName().toString()).matches()) {
          backups.add(file);
        }
      }
    }
    int stamp = stem.length() + " yyyy-MM-dd HHmmss".length();
    backups.sort(
        Comparator.comparing((Path p) -> p.getFileName().toString().substring(0, stamp))
            .thenComparing(p -> p.getFileName().toString().length())
            .thenComparing(p -> p.getFileName().toString()));
    for (Path old : backups.subList(0, Math.max(0, backups.size() - kept))) {
      Files.deleteIfExists(old);
    }
  }
}
