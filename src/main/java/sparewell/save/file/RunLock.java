package sparewell.save.file;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.regex.Pattern;
import sparewell.ooxml.WorkbookRefused;

/** Lock by which one run at a time writes a file; a second run is refused. */
public final class RunLock implements Closeable {
  private static final int TRIES = 5;

  private final Path workbook;
  private final Path file;
  private final FileChannel channel;

  private RunLock(Path workbook, Path file, FileChannel channel) {
    this.workbook = workbook;
    this.file = file;
    this.channel = channel;
  }

  /** Takes the lock for writing a workbook, or refuses where another run holds it. */
  public static RunLock take(Path workbook) throws WorkbookRefused, IOException {
    Path file = lockOf(workbook);
    for (int i = 0; i < TRIES; i++) {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      try {
        FileLock lock = channel.tryLock();
        if (lock == null) {
          throw WorkbookRefused.of(workbook, "busy");
        }
        if (isStill(file, channel)) {
          return new RunLock(workbook, file, channel);
        }
        channel.close(); // the run before us has just ended and removed the file: take a new one
      } catch (OverlappingFileLockException e) {
        channel.close();
        throw WorkbookRefused.of(workbook, "busy");
      } catch (WorkbookRefused | IOException e) {
        channel.close();
        throw e;
      }
    }
    throw WorkbookRefused.of(workbook, "busy");
  }

  /**
   * Returns whether the name still leads to the file that we locked; its size tells, as nobody else
   * writes it.
   */
  private static boolean isStill(Path file, FileChannel channel) throws IOException {
    long mark = channel.size() + 1;
    channel.write(ByteBuffer.wrap(new byte[] {'\n'}), channel.size());
    return Files.exists(file) && Files.size(file) == mark;
  }

  private static Path lockOf(Path workbook) {
    return workbook.resolveSibling("." + workbook.getFileName() + ".lock.tmp");
  }

  /** Temporary file beside the workbook in which the new one is written. */
  Path fresh() {
    return workbook.resolveSibling("." + workbook.getFileName() + ".new.tmp");
  }

  /**
   * Removes temporary files that an interrupted run left beside the workbook. Their names hold its
   * whole name: those without its ending are of a workbook that has none.
   */
  public void removeLeftovers() throws IOException {
    Pattern ours =
        Pattern.compile(
            "\\." + Pattern.quote(workbook.getFileName().toString()) + "\\.[^.]+\\.tmp");
    try (DirectoryStream<Path> files = Files.newDirectoryStream(workbook.getParent(), ".*.tmp")) {
      for (Path other : files) {
        if (ours.matcher(other.getFileName().toString()).matches()
            && !other.equals(file)
            && Files.isRegularFile(other, LinkOption.NOFOLLOW_LINKS)) {
          Files.deleteIfExists(other);
        }
      }
    }
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(file); // before the lock goes, so that nobody locks a file without a name
    channel.close();
  }
}
