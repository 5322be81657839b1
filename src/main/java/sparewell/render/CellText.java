package sparewell.render;

import java.util.regex.Pattern;

/** Text inside cells as the file format wants it. */
final class CellText {
  /** Text that a reader would take for an escaped character. */
  private static final Pattern LOOKS_ESCAPED = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");

  private CellText() {}

  /** A text element; blanks at its ends are kept only if it says so. */
  static String xml(String text) {
    String stored = stored(text);
    boolean same = stored.equals(stored.strip()) && stored.indexOf('\n') < 0;
    return Xml.filled(same ? "text" : "text with blanks", stored);
  }

  /** The text with look-alikes of escapes escaped, and line ends as line feeds. */
  static String stored(String text) {
    String unix = text.replace("\r\n", "\n").replace('\r', '\n');
    return unix.contains("_x") ? LOOKS_ESCAPED.matcher(unix).replaceAll("_x005F_") : unix;
  }
}
