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
import sparewell.ooxml.XmlElement;

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

  /** The number shapes of the cell formats of a styles part. */
  static List<NumberShape> shapes(XmlElement styles) {
    Map<Integer, NumberShape> custom = new HashMap<>();
    for (XmlElement format : listed(styles, "numFmts", "numFmt")) {
      String pattern = format.value("formatCode").orElse("");
      custom.put(digits(format.value("numFmtId").orElse("")), NumberShape.ofPattern(pattern));
    }
    List<NumberShape> shapes = new ArrayList<>();
    for (XmlElement format : listed(styles, "cellXfs", "xf")) {
      int id = digits(format.value("numFmtId").orElse(""));
      NumberShape shape = custom.get(id);
      shapes.add(shape == null ? NumberShape.ofBuiltIn(id) : shape);
    }
    return shapes;
  }

  private static List<XmlElement> listed(XmlElement styles, String list, String name) {
    return styles.child(list).map(all -> all.children(name)).orElse(List.of());
  }

  /** The entry at an index; the other where it is out of range. */
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
