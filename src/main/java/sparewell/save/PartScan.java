package sparewell.save;

import java.io.IOException;
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

/**
 * Result of one scan over the angler's parts: the highest cell format, and whether formulas may
 * read our sheets, so that their cached values become stale. Looks at cells, rules, charts, pivot
 * tables and defined names, for names of sheets, ranges of sheets and names of tables.
 *
 * <p>A text taken for a formula costs a calculation; a missed formula gives a wrong value.
 */
final class PartScan {
  /** Prefix of the names of our tables. */
  private static final String OUR_TABLES = "sw_";

  private static final int OVERLAP = 300;
  private static final int MOST = 1_000_000;
  private static final List<String> QUOTES = List.of("'", "&apos;", "&#39;");

  /** Parts that hold formulas, by what their content types say. */
  private static final List<String> WITH_FORMULAS =
      List.of("worksheet+xml", "chart", "spreadsheetml.table+xml", "pivotcachedefinition");

  private final List<String> sheets;
  private int highestFormat;
  private boolean readsOurs;

  private PartScan(List<String> names) {
    sheets = names.stream().map(name -> key(name.replace("'", "''"))).toList();
  }

  private static String key(String name) {
    return XmlText.escaped(name).toLowerCase(Locale.ROOT);
  }

  /**
   * Reads a workbook.
   *
   * @param dropped keys of entries that leave with the last run's sheets
   * @param names tabs of our sheets
   */
  static PartScan of(WorkbookPackage book, Set<String> dropped, List<String> names)
      throws WorkbookRefused, IOException {
    PartScan use = new PartScan(names);
    use.readsOurs = use.namedByAName(book);
    for (String entry : book.entryNames()) {
      String type = book.contentType(entry).orElse("").toLowerCase(Locale.ROOT);
      if (!dropped.contains(PartNames.key(entry))
          && WITH_FORMULAS.stream().anyMatch(type::contains)) {
        book.anyStretch(entry, OVERLAP, use::read);
      }
    }
    return use;
  }

  int highestFormat() {
    return highestFormat;
  }

  /** Returns whether formulas may read our sheets. */
  boolean readsOurs() {
    return readsOurs;
  }

  /** Returns whether a defined name of the angler's stands for something on our sheets. */
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

  /** Reads a stretch; false, as the whole text is wanted. */
  private boolean read(String stretch) {
    String text = stretch.toLowerCase(Locale.ROOT);
    formats(text);
    readsOurs = readsOurs || refers(text);
    return false;
  }

  private void formats(String text) {
    for (String attribute : List.of(" s=\"", " s='", " style=\"", " style='")) {
      int from = attribute.length();
      for (int at = text.indexOf(attribute); at >= 0; at = text.indexOf(attribute, at + 1)) {
        int index = 0;
        for (int i = at + from; i < text.length() && index <= MOST && digit(text, i); i++) {
          index = 10 * index + text.charAt(i) - '0';
        }
        if (index > highestFormat && isOfACell(text, at)) {
          highestFormat = index;
        }
      }
    }
  }

  /**
   * Returns whether a place is within the tag of a cell, row or column, and not in a cell's text.
   */
  private static boolean isOfACell(String text, int at) {
    int tag = text.lastIndexOf('<', at);
    if (tag < 0 || text.lastIndexOf('>', at) > tag) {
      return false;
    }
    String name = text.substring(tag + 1, text.indexOf(' ', tag));
    return List.of("c", "row", "col").contains(name.substring(name.indexOf(':') + 1));
  }

  private static boolean digit(String text, int at) {
    return text.charAt(at) >= '0' && text.charAt(at) <= '9';
  }

  private boolean refers(String text) {
    for (int mark = text.indexOf('!'); mark >= 0; mark = text.indexOf('!', mark + 1)) {
      if (namesOurSheets(text, mark)) {
        return true;
      }
    }
    // A pivot table names its source without a mark.
    return text.contains(OUR_TABLES)
        || text.contains("<worksheetsource ")
            && sheets.stream().anyMatch(sheet -> text.contains("sheet=\"" + sheet + "\""));
  }

  /**
   * Returns whether what stands before a mark is a sheet of ours, or a row of sheets, which may
   * hold it.
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
