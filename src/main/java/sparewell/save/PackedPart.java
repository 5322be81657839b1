package sparewell.save;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.zip.CRC32;
import java.util.zip.CheckedOutputStream;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.ZipEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import sparewell.ooxml.WorkbookPackage;

/**
 * A new part, packed while it is written, so that large sheets are never held unpacked.
 *
 * <p>Not a record: it holds bytes.
 */
final class PackedPart {
  /** One fixed time, so the same input gives the same bytes. */
  private static final LocalDateTime FIXED_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private static final int BUFFER = 1 << 13;

  /** Half the time of the usual level, for a tenth more bytes of a workbook. */
  private static final int LEVEL = 3;

  private final byte[] packed;
  private final long checksum;
  private final long size;

  private PackedPart(byte[] packed, long checksum, long size) {
    this.packed = packed;
    this.checksum = checksum;
    this.size = size;
  }

  static PackedPart of(byte[] content) {
    return of(out -> out.write(content));
  }

  static PackedPart of(OwnParts.Content content) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream(BUFFER);
    CRC32 checksum = new CRC32();
    Deflater deflater = new Deflater(LEVEL, true);
    try {
      try (OutputStream out =
          new CheckedOutputStream(new DeflaterOutputStream(packed, deflater, BUFFER), checksum)) {
        content.write(out);
      } catch (IOException impossible) { // it goes to memory
        throw new UncheckedIOException(impossible);
      }
      return new PackedPart(packed.toByteArray(), checksum.getValue(), deflater.getBytesRead());
    } finally {
      deflater.end();
    }
  }

  void writeTo(ZipArchiveOutputStream out, String name) throws IOException {
    ZipArchiveEntry entry = new ZipArchiveEntry(name);
    entry.setMethod(ZipEntry.DEFLATED);
    entry.setTimeLocal(FIXED_TIME);
    entry.setCrc(checksum);
    entry.setSize(size);
    entry.setCompressedSize(packed.length);
    out.addRawArchiveEntry(entry, new ByteArrayInputStream(packed));
  }

  /** Returns whether a part of a written package, checked on opening, is this one. */
  boolean is(WorkbookPackage written, String name) {
    return written.holds(name, checksum, size);
  }
}
