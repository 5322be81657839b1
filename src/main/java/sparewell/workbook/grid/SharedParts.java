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
              Digits.of(xml.getAttributeValue(null, "numFmtId")),
              NumberShape.ofPattern(pattern == null ? "" : pattern));
        } else if (cellFormats && name.equals("xf")) {
          int id = Digits.of(xml.getAttributeValue(null, "numFmtId"));
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
    int at = Digits.of(index == null ? "" : index.strip());
    return at >= 0 && at < list.size() ? list.get(at) : other;
  }
}
