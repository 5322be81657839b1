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
        throw WorkbookRefused.of(file, "open there", lock);
      }
    }
    if (Files.exists(file)) {
      checkSystemLock(file);
    }
  }

  private static void checkSystemLock(Path file) throws WorkbookRefused {
    if (!Files.isWritable(file)) {
      throw WorkbookRefused.of(file, "read-only");
    }
    for (int look = 1; held(file); look++) {
      if (look == LOOKS) {
        throw WorkbookRefused.of(file, "locked");
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
      throw WorkbookRefused.of(file, "read-only");
    } catch (IOException e) {
      throw Refusals.of(file, e);
    }
  }
}
