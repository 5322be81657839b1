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

/** The number shapes of the workbook's cell formats, by their index. */
final class CellFormats {
  private final List<NumberShape> shapes = new ArrayList<>();

  static CellFormats read(InputStream in) throws XMLStreamException {
    CellFormats formats = new CellFormats();
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
          formats.shapes.add(shape == null ? NumberShape.ofBuiltIn(id) : shape);
        }
      } else if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("cellXfs")) {
        break;
      }
    }
    xml.close();
    return formats;
  }

  /** Shape of a format; an index out of range is general, as in spreadsheet programs. */
  NumberShape shape(String index) {
    int at = Digits.of(index);
    return at >= 0 && at < shapes.size() ? shapes.get(at) : NumberShape.GENERAL;
  }
}
