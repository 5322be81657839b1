package sparewell.save.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.Optional;
import sparewell.ooxml.Fingerprint;
import sparewell.ooxml.WorkbookRefused;

/**
 * Replaces a file: writes the new one beside the old one, backs up the old one, and replaces it in
 * one step. At any moment the name leads to the whole old or the whole new file.
 *
 * @param original the file that was read
 * @param read its fingerprint then
 * @param target the file to replace, the original or another one, or a free name
 * @param now date and time for the backup's name
 * @param backupsKept how many backups stay, at least 1
 */
public record Replacement(
    Path original, Fingerprint read, Path target, LocalDateTime now, int backupsKept) {
  public Replacement {
    if (backupsKept < 1) {
      throw new IllegalArgumentException("backups kept: " + backupsKept);
    }
  }

  /** Writes the new file and verifies it. */
  @FunctionalInterface
  public interface Making {
    void make(Path fresh) throws WorkbookRefused, IOException;
  }

  /**
   * Replaces the file under the lock of this run.
   *
   * @return backup of the earlier file; absent where there was none
   */
  public Optional<Path> replaceBy(Making making) throws WorkbookRefused {
    try (RunLock lock = RunLock.take(place(target))) {
      lock.removeLeftovers();
      return replace(place(target), lock.fresh(), making);
    } catch (IOException e) {
      throw Refusals.of(target, e);
    }
  }

  private Optional<Path> replace(Path place, Path fresh, Making making)
      throws WorkbookRefused, IOException {
    Optional<Fingerprint> before = before(place);
    try {
      making.make(fresh);
      Backups backups = new Backups(place);
      Optional<Path> backup = Optional.empty();
      if (before.isPresent()) {
        Disk.copyPermissions(place, fresh);
        requireUnchanged(place, before.get());
        backup = Optional.of(backups.make(place, before.get(), now));
        OpenElsewhere.check(place);
        requireUnchanged(place, before.get());
      } else if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
        throw changed();
      }
      Files.move(fresh, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      Disk.syncFolder(place.getParent());
      if (backup.isPresent()) {
        keepLast(backups);
      }
      return backup;
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** Fingerprint of the file at the target; of the original, that of the file read. */
  private Optional<Fingerprint> before(Path place) throws WorkbookRefused, IOException {
    boolean same = target.equals(original) || isSame(original, place);
    if (Files.exists(place)) {
      return Optional.of(same ? read : Fingerprint.of(place));
    }
    if (same) {
      throw changed();
    }
    return Optional.empty();
  }

  private void requireUnchanged(Path place, Fingerprint before)
      throws WorkbookRefused, IOException {
    if (!Files.exists(place) || !Fingerprint.of(place).equals(before)) {
      throw changed();
    }
  }

  private WorkbookRefused changed() {
    return WorkbookRefused.of(target, "changed");
  }

  /** Ignores faults: the workbook is already saved. */
  private void keepLast(Backups backups) {
    try {
      backups.keepLast(backupsKept);
    } catch (IOException e) {
      // The next run tries again.
    }
  }

  public static boolean isSame(Path one, Path other) {
    try {
      return Files.exists(other) && Files.isSameFile(one, other);
    } catch (IOException e) {
      return false;
    }
  }

  /** The real file behind links, so that a link stays one; for a new file its real folder. */
  public static Path place(Path target) throws IOException, WorkbookRefused {
    if (Files.isDirectory(target)) {
      throw WorkbookRefused.of(target, "target folder");
    }
    if (Files.exists(target)) {
      return target.toRealPath();
    }
    Path folder = target.toAbsolutePath().getParent();
    return folder.toRealPath().resolve(target.getFileName());
  }

  /** A name's ending with its dot; empty if none. */
  public static String extension(String name) {
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(dot) : "";
  }
}
