package sparewell.save;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import org.apache.commons.compress.archivers.zip.Zip64Mode;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.WorkbookPackage;

/**
 * A package made of another one's entries, copied packed as they are, but for some.
 *
 * <p>Edited parts keep their place, new ones come last; their times are fixed, so the same input
 * gives the same bytes.
 *
 * <p>Not a record: parts are bytes.
 */
final class NewPackage {
  private static final LocalDateTime FIXED_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final WorkbookPackage book;
  private final Set<String> dropped;
  private final Map<String, byte[]> edited;
  private final Map<String, byte[]> added;

  /**
   * A package to write.
   *
   * @param dropped keys of entries that are left out
   * @param edited new contents by the key of their entry
   * @param added contents of further entries by name
   */
  NewPackage(
      WorkbookPackage book,
      Set<String> dropped,
      Map<String, byte[]> edited,
      Map<String, byte[]> added) {
    this.book = book;
    this.dropped = dropped;
    this.edited = edited;
    this.added = added;
  }

  /** Writes it to a new file and to the disk under it. */
  void write(Path file) throws IOException {
    try (FileChannel channel =
            FileChannel.open(
                file,
                StandardOpenOption.CREATE_NEW,
                StandardOpenOption.READ,
                StandardOpenOption.WRITE);
        ZipArchiveOutputStream out = new ZipArchiveOutputStream(channel)) {
      out.setUseLanguageEncodingFlag(true);
      out.setUseZip64(Zip64Mode.Never); // nothing here can be so large, see the bounds on opening
      for (String entry : book.entryNames()) {
        String key = PartNames.key(entry);
        if (edited.containsKey(key)) {
          put(out, entry, edited.get(key));
        } else if (!dropped.contains(key)) {
          book.copyRaw(entry, out);
        }
      }
      for (Map.Entry<String, byte[]> part : added.entrySet()) {
        put(out, part.getKey(), part.getValue());
      }
      out.finish();
      channel.force(true);
    }
  }

  private static void put(ZipArchiveOutputStream out, String name, byte[] content)
      throws IOException {
    ZipArchiveEntry entry = new ZipArchiveEntry(name);
    entry.setMethod(ZipEntry.DEFLATED);
    entry.setTimeLocal(FIXED_TIME);
    out.putArchiveEntry(entry);
    out.write(content);
    out.closeArchiveEntry();
  }
}
