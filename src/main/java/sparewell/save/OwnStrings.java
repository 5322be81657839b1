package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import sparewell.ooxml.SafeXml;
import sparewell.ooxml.WorkbookPackage;

/** The texts of our scratch workbook, each as the inside of its element: plain or rich text. */
final class OwnStrings {
  private OwnStrings() {}

  static List<String> of(WorkbookPackage scratch) throws IOException, XMLStreamException {
    List<String> strings = new ArrayList<>();
    if (scratch.sharedStringsPart().isEmpty()) {
      return strings;
    }
    try (InputStream part = scratch.part(scratch.sharedStringsPart().get())) {
      XMLStreamReader in = SafeXml.reader(part);
      while (in.hasNext()) {
        if (in.next() == XMLStreamConstants.START_ELEMENT && in.getLocalName().equals("si")) {
          strings.add(XmlCopy.inside(in));
        }
      }
    }
    return strings;
  }
}
