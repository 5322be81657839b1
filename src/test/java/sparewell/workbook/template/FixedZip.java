package sparewell.workbook.template;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * Mends what POI writes: takes the clock out of the zip file, so that the same content gives the
 * same bytes, and names the default cell style, which POI leaves out and other readers miss.
 */
final class FixedZip {
  private static final LocalDateTime TIME = LocalDateTime.of(2026, 1, 1, 0, 0);

  /** ECMA-376 part 1, sections 18.8.7 and 18.8.8. */
  private static final String DEFAULT_STYLE =
      "<cellStyles count=\"1\"><cellStyle name=\"Normal\" xfId=\"0\" builtinId=\"0\"/></cellStyles>";

  private FixedZip() {}

  static byte[] mended(byte[] zip) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(zip.length);
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        ZipEntry copy = new ZipEntry(entry.getName());
        copy.setTimeLocal(TIME);
        out.putNextEntry(copy);
        if (entry.getName().equals("xl/styles.xml")) {
          String styles = new String(in.readAllBytes(), StandardCharsets.UTF_8);
          out.write(
              styles
                  .replace("</cellXfs>", "</cellXfs>" + DEFAULT_STYLE)
                  .getBytes(StandardCharsets.UTF_8));
        } else {
          in.transferTo(out);
        }
        out.closeEntry();
      }
    }
    return bytes.toByteArray();
  }
}
