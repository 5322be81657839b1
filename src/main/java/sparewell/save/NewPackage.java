package sparewell.save;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.Set;
import org.apache.commons.compress.archivers.zip.Zip64Mode;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.WorkbookPackage;

/**
 * A package made from another one: entries are copied in packed form, edited parts keep their
 * position, new ones come last.
 *
 * @param dropped keys of entries that are left out
 * @param edited new contents by the key of their entry
 * @param added contents of further entries by name
 */
record NewPackage(
    WorkbookPackage book,
    Set<String> dropped,
    Map<String, PackedPart> edited,
    Map<String, PackedPart> added) {
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
          edited.get(key).writeTo(out, entry);
        } else if (!dropped.contains(key)) {
          book.copyRaw(entry, out);
        }
      }
      for (Map.Entry<String, PackedPart> part : added.entrySet()) {
        part.getValue().writeTo(out, part.getKey());
      }
      out.finish();
      channel.force(true);
    }
  }
}
