package sparewell.ooxml;

import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;

/**
 * A worksheet's part as text, its rows apart from the rest: a sheet may hold far more cells than
 * are worth an element each.
 */
public final class SheetText {
  private static final Pattern ROWS_BEGIN = Pattern.compile("<((?:[\\w.-]+:)?)sheetData\\s*>");

  private final XmlText frame;
  private final String prefix;
  private final String rows;

  private SheetText(XmlText frame, String prefix, String rows) {
    this.frame = frame;
    this.prefix = prefix;
    this.rows = rows;
  }

  /** Reads a part; throws where it is damaged or written in a way that no known program does. */
  static SheetText parse(byte[] bytes) throws XMLStreamException {
    Charset charset = XmlText.charset(bytes);
    String text = XmlText.decode(bytes, charset);
    Matcher begin = ROWS_BEGIN.matcher(text);
    if (!Arrays.equals(bytes, XmlText.encode(text, charset)) || !begin.find()) {
      throw new XMLStreamException("a sheet without rows, or in a mixed encoding");
    }
    int end = text.lastIndexOf("</" + begin.group(1) + "sheetData");
    if (end < begin.end()) {
      throw new XMLStreamException("rows without an end");
    }
    String rows = text.substring(begin.end(), end);
    if (rows.contains("<!")) { // a comment or marked section could hide what looks like a row
      throw new XMLStreamException("rows with comments");
    }
    String rest = text.substring(0, begin.end()) + text.substring(end);
    return new SheetText(XmlText.parse(XmlText.encode(rest, charset)), begin.group(1), rows);
  }

  /** The part with its {@code sheetData} emptied, its two tags left. */
  public XmlText frame() {
    return frame;
  }

  /** What stands between the two tags of {@code sheetData}. */
  public String rows() {
    return rows;
  }

  /** The prefix of its elements with the colon; empty if none. */
  public String prefix() {
    return prefix;
  }
}
