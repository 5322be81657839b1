package sparewell.workbook.grid;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** The text of a string item: its {@code t} elements outside phonetic runs, escapes undone. */
final class CellText {
  private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  private CellText() {}

  /** Reads up to the end of the element the reader stands at. */
  static String read(XMLStreamReader xml) throws XMLStreamException {
    StringBuilder text = new StringBuilder();
    int depth = 1;
    int phonetic = 0;
    boolean inText = false;
    while (depth > 0) {
      switch (xml.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          depth++;
          if (xml.getLocalName().equals("rPh")) {
            phonetic++;
          }
          inText = phonetic == 0 && xml.getLocalName().equals("t");
        }
        case XMLStreamConstants.END_ELEMENT -> {
          depth--;
          inText = false;
          if (xml.getLocalName().equals("rPh")) {
            phonetic--;
          }
        }
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
          if (inText) {
            text.append(xml.getText());
          }
        }
        default -> {}
      }
    }
    return unescape(text.toString());
  }

  /**
   * Undoes {@code _x000D_}-style escapes.
   *
   * @see "ECMA-376 part 1, section 22.9.2.19 ST_Xstring"
   */
  static String unescape(String text) {
    if (text.indexOf("_x") < 0) {
      return text;
    }
    return ESCAPE
        .matcher(text)
        .replaceAll(
            escape ->
                Matcher.quoteReplacement(
                    Character.toString(Integer.parseInt(escape.group(1), 16))));
  }
}
