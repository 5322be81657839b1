package sparewell.save.file;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.Locale;
import sparewell.ooxml.WorkbookRefused;

/** Refusals for faults of the disk, in an angler's words. */
public final class Refusals {
  private Refusals() {}

  /** Returns true where a read or write failed for want of room on the disk. */
  public static boolean diskFull(IOException e) {
    String reason = reason(e).toLowerCase(Locale.ROOT);
    return reason.contains("no space left")
        || reason.contains("not enough space")
        || reason.contains("quota exceeded");
  }

  /** Refusal for a failed read or write while saving. */
  public static WorkbookRefused of(Path file, IOException e) {
    return WorkbookRefused.of(file, kind(e), reason(e));
  }

  private static String kind(IOException e) {
    String reason = reason(e).toLowerCase(Locale.ROOT);
    if (diskFull(e)) {
      return "disk full";
    }
    if (reason.contains("name too long") || reason.contains("filename or extension is too long")) {
      return "long name";
    }
    if (reason.contains("read-only file system") || reason.contains("write-protected")) {
      return "read-only disk";
    }
    if (e instanceof AccessDeniedException || reason.contains("not permitted")) {
      return "not permitted";
    }
    if (e instanceof NoSuchFileException || e instanceof NotDirectoryException) {
      return "vanished";
    }
    if (e instanceof AtomicMoveNotSupportedException) {
      return "two steps";
    }
    return reason.contains("being used by another process") ? "open" : "disk";
  }

  private static String reason(IOException e) {
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getReason();
    }
    return e.getMessage() == null ? "unknown reason" : e.getMessage();
  }
}
