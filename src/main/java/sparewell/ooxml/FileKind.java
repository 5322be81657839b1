package sparewell.ooxml;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Determines the kind of a file by its first bytes, whatever its name. */
final class FileKind {
  private static final String SAVE_AS =
      "Open it in your spreadsheet program and save it as an ordinary workbook (.xlsx).";
  private static final int LOOKED_AT = 1 << 20;

  private FileKind() {}

  /** Refuses a file that does not begin like a zip. */
  static void requireZip(Path file) throws WorkbookRefused, IOException {
    byte[] head;
    try (var in = Files.newInputStream(file)) {
      head = in.readNBytes(LOOKED_AT);
    }
    if (head.length == 0) {
      throw new WorkbookRefused(
          file, "the file is empty", "Put back a copy of it, for example from its backups.");
    }
    String latin = new String(head, StandardCharsets.ISO_8859_1);
    if (latin.startsWith("\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1")) {
      throw oldFormat(file, latin);
    }
    if (latin.startsWith("PK\u0003\u0004") || latin.startsWith("PK\u0005\u0006")) {
      return;
    }
    String text = latin.replace("\u0000", "").strip().toLowerCase(Locale.ROOT);
    if (text.startsWith("<") || text.startsWith("\u00ef\u00bb\u00bf<")) {
      throw new WorkbookRefused(
          file, "this is a web page or XML text, not a workbook, whatever its name says", SAVE_AS);
    }
    if (latin.substring(0, Math.min(latin.length(), 4096)).indexOf('\u0000') < 0) {
      throw new WorkbookRefused(
          file, "this is plain text, not a workbook, whatever its name says", SAVE_AS);
    }
    throw new WorkbookRefused(
        file, "this is not a workbook, or it is damaged at its start", SAVE_AS);
  }

  private static WorkbookRefused oldFormat(Path file, String latin) {
    if (latin.contains(wide("EncryptedPackage"))) {
      return new WorkbookRefused(
          file,
          "the workbook is locked with a password",
          "Open it in your spreadsheet program, take the password for opening off, and save it.");
    }
    if (latin.contains(wide("Workbook")) || latin.contains(wide("Book"))) {
      return new WorkbookRefused(file, "this is a workbook of the old .xls kind", SAVE_AS);
    }
    return new WorkbookRefused(
        file, "this is an old office document or a locked workbook, not an .xlsx", SAVE_AS);
  }

  private static String wide(String name) {
    StringBuilder wide = new StringBuilder();
    name.chars().forEach(c -> wide.append((char) c).append('\u0000'));
    return wide.toString();
  }

  static WorkbookRefused otherZip(Path file, ZipParts zip) {
    String mimetype = zip.textOf("mimetype");
    if (mimetype.contains("opendocument")) {
      return new WorkbookRefused(
          file, "this is an OpenDocument file (.ods), whatever its name says", SAVE_AS);
    }
    if (zip.find("xl/workbook.bin").isPresent()) {
      return new WorkbookRefused(file, "this is a binary workbook (.xlsb)", SAVE_AS);
    }
    if (zip.find("word/document.xml").isPresent() || zip.find("ppt/presentation.xml").isPresent()) {
      return new WorkbookRefused(
          file, "this is a text document or a presentation, not a workbook", "Name a workbook.");
    }
    return new WorkbookRefused(
        file,
        "there is no workbook inside this file, or the part that lists it is damaged",
        SAVE_AS);
  }
}
