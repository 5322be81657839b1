package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlOut;

/**
 * Whether formulas of the angler's may read our sheets, so that their cached values grow stale: in
 * cells, rules, charts, pivot tables and defined names, by a sheet's name, over a row of sheets, or
 * by the name of a table.
 *
 * <p>It looks at the text only: taking a cell's text for a formula costs one calculation, missing a
 * formula a wrong value.
 */
final class OwnFeeds {
  private static final int OVERLAP = 300;
  private static final List<String> QUOTES = List.of("'", "&apos;", "&#39;");

  /** Parts that hold formulas, by what their content types say. */
  private static final List<String> WITH_FORMULAS =
      List.of("worksheet+xml", "chart", "spreadsheetml.table+xml", "pivotcachedefinition");

  private final List<String> sheets;
  private final List<String> tables;

  private OwnFeeds(Collection<OwnSheet> sheets, Collection<String> tables) {
    this.sheets = sheets.stream().map(s -> key(s.name().replace("'", "''"))).toList();
    this.tables = tables.stream().map(OwnFeeds::key).toList();
  }

  private static String key(String name) {
    return XmlOut.text(name).toLowerCase(Locale.ROOT);
  }

  /**
   * Looks for references.
   *
   * @param dropped keys of entries that leave with the last run's sheets
   * @param tables names of the tables of our sheets
   */
  static boolean any(
      WorkbookPackage book,
      Set<String> dropped,
      Collection<OwnSheet> sheets,
      Collection<String> tables)
      throws WorkbookRefused, IOException {
    OwnFeeds feeds = new OwnFeeds(sheets, tables);
    if (sheets.isEmpty()) {
      return false;
    }
    if (feeds.namedByAName(book)) {
      return true;
    }
    for (String entry : book.entryNames()) {
      String type = book.contentType(entry).orElse("").toLowerCase(Locale.ROOT);
      if (!dropped.contains(PartNames.key(entry))
          && WITH_FORMULAS.stream().anyMatch(type::contains)
          && feeds.namedIn(book, entry)) {
        return true;
      }
    }
    return false;
  }

  /** Whether a defined name of the angler's stands for something on our sheets. */
  private boolean namedByAName(WorkbookPackage book) throws WorkbookRefused {
    XmlText xml = book.xml(book.workbookPart());
    List<SheetEntry> old = book.sheets();
    Stream<XmlElement> names =
        xml.root().child("definedNames").stream().flatMap(d -> d.children("definedName").stream());
    return names
        .filter(name -> name.value("localSheetId").filter(at -> isOwn(old, at)).isEmpty())
        .anyMatch(name -> refers(xml.text(name).toLowerCase(Locale.ROOT)));
  }

  private static boolean isOwn(List<SheetEntry> old, String position) {
    int at = position.matches("\\d{1,6}") ? Integer.parseInt(position) : old.size();
    return at < old.size() && old.get(at).own();
  }

  private boolean namedIn(WorkbookPackage book, String part) throws IOException {
    byte[] buffer = new byte[1 << 18];
    String rest = "";
    try (InputStream in = book.part(part)) {
      for (int n = in.readNBytes(buffer, 0, buffer.length);
          n > 0;
          n = in.readNBytes(buffer, 0, buffer.length)) {
        // One character a byte; UTF-16 has a zero byte in each pair of our plain names.
        String read = new String(buffer, 0, n, StandardCharsets.ISO_8859_1);
        String text = rest + read.replace("\0", "").toLowerCase(Locale.ROOT);
        if (refers(text)) {
          return true;
        }
        rest = text.substring(Math.max(0, text.length() - OVERLAP));
      }
    }
    return false;
  }

  private boolean refers(String text) {
    for (int mark = text.indexOf('!'); mark >= 0; mark = text.indexOf('!', mark + 1)) {
      if (namesOurSheets(text, mark)) {
        return true;
      }
    }
    // A pivot table names its source without a mark.
    return tables.stream().anyMatch(text::contains)
        || text.contains("<worksheetsource ")
            && sheets.stream().anyMatch(sheet -> text.contains("sheet=\"" + sheet + "\""));
  }

  /**
   * Whether what stands before a mark is a sheet of ours, or a row of sheets, which may hold it.
   */
  private boolean namesOurSheets(String text, int mark) {
    for (String quote : QUOTES) {
      if (text.startsWith(quote, mark - quote.length())) {
        int end = mark - quote.length();
        int start = text.lastIndexOf(quote, end - 1);
        while (start >= quote.length() && text.startsWith(quote, start - quote.length())) {
          start = text.lastIndexOf(quote, start - quote.length() - 1); // a doubled quote
        }
        String name = text.substring(Math.max(0, start) + (start < 0 ? 0 : quote.length()), end);
        return name.indexOf(':') >= 0 || sheets.contains(name.replace(quote, "'"));
      }
    }
    int start = mark;
    while (start > 0 && isOfPlainName(text.charAt(start - 1))) {
      start--;
    }
    String name = text.substring(start, mark);
    return name.indexOf(':') >= 0 || sheets.contains(name);
  }

  private static boolean isOfPlainName(char c) {
    return Character.isLetterOrDigit(c) || "_.:".indexOf(c) >= 0 || c > '~';
  }
}
