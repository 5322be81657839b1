package sparewell.workbook.grid;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import sparewell.ooxml.SafeXml;

/** Reads the parts that the sheets of a workbook share: texts and cell formats, by their index. */
final class SharedParts {
  private static final int MOST_DIGITS = 9;

  private SharedParts() {}

  static List<String> texts(InputStream in) throws XMLStreamException {
    List<String> texts = new ArrayList<>();
    XMLStreamReader xml = SafeXml.reader(in);
    while (xml.hasNext()) {
      if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("si")) {
        texts.add(CellText.read(xml));
      }
    }
    xml.close();
    return texts;
  }

  /** The number shapes of the cell formats. */
  static List<NumberShape> shapes(InputStream in) throws XMLStreamException {
    List<NumberShape> shapes = new ArrayList<>();
    Map<Integer, NumberShape> custom = new HashMap<>();
    XMLStreamReader xml = SafeXml.reader(in);
    boolean cellFormats = false;
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        String name = xml.getLocalName();
        if (name.equals("cellXfs")) {
          cellFormats = true;
        } else if (name.equals("numFmt")) {
          String pattern = xml.getAttributeValue(null, "formatCode");
          custom.put(
              digits(xml.getAttributeValue(null, "numFmtId")),
              NumberShape.ofPattern(pattern == null ? "" : pattern));
        } else if (cellFormats && name.equals("xf")) {
          int id = digits(xml.getAttributeValue(null, "numFmtId"));
          NumberShape shape = custom.get(id);
          shapes.add(shape == null ? NumberShape.ofBuiltIn(id) : shape);
        }
      } else if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("cellXfs")) {
        break;
      }
    }
    xml.close();
    return shapes;
  }

  /** What stands at an index; the other where it is out of range. */
  static <T> T at(List<T> list, String index, T other) {
    int at = digits(index == null ? "" : index.strip());
    return at >= 0 && at < list.size() ? list.get(at) : other;
  }

  /** The number of up to nine digits, else -1; the JDK throws on a fault, which takes time. */
  static int digits(String text) {
    if (text == null || text.isEmpty() || text.length() > MOST_DIGITS) {
      return -1;
    }
    int number = 0;
    for (int i = 0; i < text.length(); i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      number = number * 10 + digit;
    }
    return number;
  }
}
