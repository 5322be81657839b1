package sparewell.save.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import sparewell.ooxml.WorkbookRefused;

/** Detects workbooks open in another program, by lock files and system locks. */
public final class OpenElsewhere {
  private static final int LOOKS = 4; // another run that looks, too, holds it for a moment
  private static final long PAUSE_NANOS = 25_000_000;

  private OpenElsewhere() {}

  /** Refuses a file that another program has open; one that does not exist is free. */
  public static void check(Path file) throws WorkbookRefused {
    String name = file.getFileName().toString();
    for (String lock : List.of("~$" + name, ".~lock." + name + "#")) {
      if (Files.exists(file.resolveSibling(lock), LinkOption.NOFOLLOW_LINKS)) {
        throw Refusals.elsewhere(
            file,
            "a spreadsheet program has it open (there is a lock file " + lock + ")",
            "Close it there and run again. If no program has it open, the lock file is left from a"
                + " crash: delete %s beside the workbook.".formatted(lock));
      }
    }
    if (Files.exists(file)) {
      checkSystemLock(file);
    }
  }

  private static void checkSystemLock(Path file) throws WorkbookRefused {
    if (!Files.isWritable(file)) {
      throw readOnly(file);
    }
    for (int look = 1; held(file); look++) {
      if (look == LOOKS) {
        throw locked(file);
      }
      LockSupport.parkNanos(PAUSE_NANOS);
    }
  }

  private static boolean held(Path file) throws WorkbookRefused {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
        FileLock lock = channel.tryLock()) {
      return lock == null;
    } catch (OverlappingFileLockException e) {
      return true;
    } catch (AccessDeniedException e) {
      throw readOnly(file);
    } catch (IOException e) {
      throw Refusals.of(file, e);
    }
  }

  private static WorkbookRefused locked(Path file) {
    return Refusals.elsewhere(
        file,
        "another program holds it locked",
        "Close it there and run again. A lock that stays after"
            + " all programs are closed goes away when the computer is restarted.");
  }

  private static WorkbookRefused readOnly(Path file) {
    return Refusals.elsewhere(
        file, "the file is read-only", "Take the read-only mark off and run again.");
  }
}
