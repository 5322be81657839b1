package sparewell.workbook.grid;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import sparewell.ooxml.SafeXml;

/** The texts that cells share, by their index. */
final class SharedTexts {
  private final List<String> texts = new ArrayList<>();

  static SharedTexts read(InputStream in) throws XMLStreamException {
    SharedTexts shared = new SharedTexts();
    XMLStreamReader xml = SafeXml.reader(in);
    while (xml.hasNext()) {
      if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("si")) {
        shared.texts.add(CellText.read(xml));
      }
    }
    xml.close();
    return shared;
  }

  Optional<String> text(String index) {
    int at = Digits.of(index.strip());
    return at >= 0 && at < texts.size() ? Optional.of(texts.get(at)) : Optional.empty();
  }
}
