package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.save.xml.XmlOut;

/** Whether formulas of the angler's may read our sheets, so that their cached values grow stale. */
final class OwnFeeds {
  private static final int OVERLAP = 200;
  private static final List<String> QUOTES = List.of("'", "&apos;", "&#39;");

  private OwnFeeds() {}

  /**
   * Looks for {@code Name!} in the angler's sheets and the workbook's names. It looks at the text
   * only: taking a cell's text for a formula costs one calculation, missing a formula a wrong
   * value.
   */
  static boolean any(WorkbookPackage book, List<OwnSheet> sheets) throws IOException {
    if (sheets.isEmpty()) {
      return false;
    }
    List<String> names =
        sheets.stream().map(s -> XmlOut.text(s.name()).replace("'", "''")).toList();
    for (SheetEntry sheet : book.sheets()) {
      if (!sheet.own()
          && sheet.worksheet()
          && sheet.partName().isPresent()
          && contains(book, sheet.partName().get(), names)) {
        return true;
      }
    }
    return false;
  }

  private static boolean contains(WorkbookPackage book, String part, List<String> names)
      throws IOException {
    byte[] buffer = new byte[1 << 18];
    String rest = "";
    try (InputStream in = book.part(part)) {
      for (int n = in.readNBytes(buffer, 0, buffer.length);
          n > 0;
          n = in.readNBytes(buffer, 0, buffer.length)) {
        // One character a byte; UTF-16 has a zero byte in each pair of our plain names.
        String text =
            rest + new String(buffer, 0, n, StandardCharsets.ISO_8859_1).replace("\0", "");
        if (refers(text, names)) {
          return true;
        }
        rest = text.substring(Math.max(0, text.length() - OVERLAP));
      }
    }
    return false;
  }

  private static boolean refers(String text, List<String> names) {
    for (int mark = text.indexOf('!'); mark >= 0; mark = text.indexOf('!', mark + 1)) {
      if (endsWithName(text, mark, names)) {
        return true;
      }
    }
    for (int mark = text.indexOf(':'); mark >= 0; mark = text.indexOf(':', mark + 1)) {
      if (endsWithName(text, mark, names)) {
        return true;
      }
    }
    return false;
  }

  /** Whether a name, perhaps with its closing quote, ends before a place. */
  private static boolean endsWithName(String text, int place, List<String> names) {
    int end = place;
    for (String quote : QUOTES) {
      if (text.startsWith(quote, place - quote.length())) {
        end = place - quote.length();
      }
    }
    for (String name : names) {
      if (text.regionMatches(true, end - name.length(), name, 0, name.length())) {
        return true;
      }
    }
    return false;
  }
}
