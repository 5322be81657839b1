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
  private static final String UNCHANGED = " The workbook is as it was.";

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
    if (diskFull(e)) {
      return refused(file, "the disk is full", "Free some space and run again.");
    }
    String reason = reason(e).toLowerCase(Locale.ROOT);
    if (reason.contains("name too long") || reason.contains("filename or extension is too long")) {
      return refused(
          file,
          "its name, with the few letters added while writing, is too long for this disk",
          "Give the workbook or its folders shorter names.");
    }
    if (reason.contains("read-only file system") || reason.contains("write-protected")) {
      return refused(
          file, "the disk is read-only", "Copy the workbook to another disk and run there.");
    }
    if (e instanceof AccessDeniedException || reason.contains("not permitted")) {
      return elsewhere(
          file, "you have no permission to write in its folder", "Ask for the permission.");
    }
    if (e instanceof NoSuchFileException || e instanceof NotDirectoryException) {
      return refused(
          file,
          "the file or its folder is not there, or vanished meanwhile",
          "Check the folder (a drive taken out?) and run again.");
    }
    if (e instanceof AtomicMoveNotSupportedException) {
      return refused(
          file,
          "this disk cannot replace a file in one step",
          "Copy the workbook to another disk and run there.");
    }
    if (reason.contains("being used by another process")) {
      return elsewhere(file, "another program has it open", "Close it there and run again.");
    }
    return refused(
        file, "it could not be written (" + reason(e) + ")", "Check the disk and run again.");
  }

  /** A refusal that says what to do, and that nothing was changed. */
  public static WorkbookRefused refused(Path file, String problem, String remedy) {
    return new WorkbookRefused(file, problem, remedy + UNCHANGED);
  }

  /** The same where writing to another file would do. */
  static WorkbookRefused elsewhere(Path file, String problem, String remedy) {
    return new WorkbookRefused(file, problem, remedy + UNCHANGED, true);
  }

  private static String reason(IOException e) {
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getReason();
    }
    return e.getMessage() == null ? "unknown reason" : e.getMessage();
  }
}
