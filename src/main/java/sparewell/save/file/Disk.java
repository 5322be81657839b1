package sparewell.save.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Operations that some file systems lack. */
final class Disk {
  private Disk() {}

  /** Flushes a folder's list of names to the disk, where the system can. */
  static void syncFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Some systems cannot open a folder; their moves are journalled.
    }
  }

  /** Gives a new file the permissions of the one it replaces, where the system has such. */
  static void copyPermissions(Path from, Path to) throws IOException {
    try {
      Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
      Files.setAttribute(to, "unix:gid", Files.getAttribute(from, "unix:gid"));
      Files.setOwner(to, Files.getOwner(from));
    } catch (UnsupportedOperationException | IllegalArgumentException e) {
      // no such permissions here
    } catch (FileSystemException e) {
      // Only the owner or the administrator may hand a file on.
    }
  }
}
