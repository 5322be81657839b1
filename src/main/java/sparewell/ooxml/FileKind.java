package sparewell.ooxml;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Determines the kind of a file by its first bytes, whatever its name. */
final class FileKind {
  private static final int LOOKED_AT = 1 << 20;

  private FileKind() {}

  /** Refuses a file that does not begin like a zip. */
  static void requireZip(Path file) throws WorkbookRefused, IOException {
    byte[] head;
    try (var in = Files.newInputStream(file)) {
      head = in.readNBytes(LOOKED_AT);
    }
    if (head.length == 0) {
      throw WorkbookRefused.of(file, "empty");
    }
    String latin = new String(head, StandardCharsets.ISO_8859_1);
    if (latin.startsWith("\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1")) {
      throw WorkbookRefused.of(file, oldFormat(latin));
    }
    if (latin.startsWith("PK\u0003\u0004") || latin.startsWith("PK\u0005\u0006")) {
      return;
    }
    String text = latin.replace("\u0000", "").strip().toLowerCase(Locale.ROOT);
    if (text.startsWith("<") || text.startsWith("\u00ef\u00bb\u00bf<")) {
      throw WorkbookRefused.of(file, "web page");
    }
    boolean zeros = latin.substring(0, Math.min(latin.length(), 4096)).indexOf('\u0000') >= 0;
    throw WorkbookRefused.of(file, zeros ? "no zip" : "text");
  }

  private static String oldFormat(String latin) {
    if (latin.contains(wide("EncryptedPackage"))) {
      return "encrypted";
    }
    return latin.contains(wide("Workbook")) || latin.contains(wide("Book"))
        ? "xls"
        : "old document";
  }

  private static String wide(String name) {
    StringBuilder wide = new StringBuilder();
    name.chars().forEach(c -> wide.append((char) c).append('\u0000'));
    return wide.toString();
  }

  static WorkbookRefused otherZip(Path file, ZipParts zip) {
    return WorkbookRefused.of(file, otherZip(zip));
  }

  private static String otherZip(ZipParts zip) {
    if (zip.textOf("mimetype").contains("opendocument")) {
      return "ods";
    }
    if (zip.find("xl/workbook.bin").isPresent()) {
      return "xlsb";
    }
    boolean document =
        zip.find("word/document.xml").isPresent() || zip.find("ppt/presentation.xml").isPresent();
    return document ? "document" : "other zip";
  }
}
