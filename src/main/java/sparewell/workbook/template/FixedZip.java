package sparewell.workbook.template;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Takes the clock out of a zip file, so that the same content gives the same bytes. */
final class FixedZip {
  private static final LocalDateTime TIME = LocalDateTime.of(2026, 1, 1, 0, 0);

  private FixedZip() {}

  static byte[] withFixedTimes(byte[] zip) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(zip.length);
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        ZipEntry copy = new ZipEntry(entry.getName());
        copy.setTimeLocal(TIME);
        out.putNextEntry(copy);
        in.transferTo(out);
        out.closeEntry();
      }
    }
    return bytes.toByteArray();
  }
}
