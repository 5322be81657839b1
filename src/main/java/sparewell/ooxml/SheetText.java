package sparewell.ooxml;

import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;

/**
 * A worksheet's part as text, without an element for each of its many cells.
 *
 * @param frame the part with an empty {@code sheetData}
 * @param prefix prefix of its elements with the colon; empty if none
 * @param rows text between the two tags of {@code sheetData}
 */
public record SheetText(XmlText frame, String prefix, String rows) {
  private static final Pattern ROWS_BEGIN = Pattern.compile("<((?:[\\w.-]+:)?)sheetData\\s*>");

  /** Reads a part; throws where it is damaged or its rows hold comments. */
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
}
