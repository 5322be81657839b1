package sparewell.ooxml;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Finds the elements of a text with their positions. The reader gives names and values and refuses
 * what is not well-formed; positions are found beside it, so that none hangs on how it counts.
 */
final class XmlScanner {
  private static final int MOST_ELEMENTS = 1_000_000;

  private final String text;
  private final XMLStreamReader xml;

  /** Characters since the last start tag. */
  private final StringBuilder content = new StringBuilder();

  /** Place up to which tags have been met. */
  private int at;

  private int count;

  XmlScanner(String text) throws XMLStreamException {
    this.text = text;
    this.xml = SafeXml.reader(new StringReader(text));
  }

  XmlElement root() throws XMLStreamException {
    XmlElement root = null;
    while (xml.hasNext()) {
      if (xml.next() == XMLStreamConstants.START_ELEMENT) {
        root = element();
      }
    }
    xml.close();
    return root;
  }

  /** The element whose start has just been read; the reader bounds how deep they are nested. */
  private XmlElement element() throws XMLStreamException {
    if (++count > MOST_ELEMENTS) {
      throw new XMLStreamException("more elements than any workbook needs");
    }
    String prefix = Objects.toString(xml.getPrefix(), "");
    String name = xml.getLocalName();
    String namespace = Objects.toString(xml.getNamespaceURI(), "");
    int start = nextTag();
    at = nameEnd(start + 1);
    List<XmlElement.Attribute> attributes = attributes();
    int startTagEnd = tagEnd(at);
    at = startTagEnd;
    List<XmlElement> children = new ArrayList<>();
    content.setLength(0);
    for (int event = xml.next(); event != XMLStreamConstants.END_ELEMENT; event = xml.next()) {
      if (event == XMLStreamConstants.START_ELEMENT) {
        children.add(element());
      } else if (xml.hasText() && event != XMLStreamConstants.COMMENT) {
        content.append(xml.getText());
      }
    }
    int endTagStart = startTagEnd;
    if (text.charAt(startTagEnd - 2) != '/') {
      endTagStart = nextTag();
      at = tagEnd(endTagStart);
    }
    return new XmlElement(
        prefix,
        name,
        namespace,
        start,
        startTagEnd,
        endTagStart,
        at,
        attributes,
        children,
        children.isEmpty() ? content.toString() : "");
  }

  /** Where the next tag begins, behind comments and the like. */
  private int nextTag() throws XMLStreamException {
    int next = text.indexOf('<', at);
    while (next >= 0 && (text.startsWith("<!", next) || text.startsWith("<?", next))) {
      String end =
          text.startsWith("<!--", next) ? "-->" : text.startsWith("<![", next) ? "]]>" : "?>";
      next = text.indexOf('<', text.indexOf(end, next + 2));
    }
    if (next < 0) {
      throw new XMLStreamException("damaged XML");
    }
    return next;
  }

  /** Behind the tag, where no more attributes are in between. */
  private int tagEnd(int from) {
    return text.indexOf('>', from) + 1;
  }

  /** Attributes of a start tag from here to its end. */
  private List<XmlElement.Attribute> attributes() throws XMLStreamException {
    List<XmlElement.Attribute> all = new ArrayList<>();
    int index = 0;
    for (int start = behindSpace(at); nameEnd(start) > start; start = behindSpace(at)) {
      int nameEnd = nameEnd(start);
      int open = behindSpace(text.indexOf('=', nameEnd) + 1);
      int end = text.indexOf(text.charAt(open), open + 1) + 1;
      if (end <= at) {
        throw new XMLStreamException("damaged XML");
      }
      at = end;
      String qualified = text.substring(start, nameEnd);
      int colon = qualified.indexOf(':');
      String prefix = qualified.substring(0, Math.max(0, colon));
      String name = qualified.substring(colon + 1);
      boolean declares = qualified.equals("xmlns") || prefix.equals("xmlns");
      String namespace = declares ? prefix : Objects.toString(xml.getAttributeNamespace(index), "");
      String value =
          declares
              ? Objects.toString(xml.getNamespaceURI(colon < 0 ? "" : name), "")
              : xml.getAttributeValue(index++);
      all.add(new XmlElement.Attribute(prefix, name, namespace, value, start, end));
    }
    return all;
  }

  private int nameEnd(int start) {
    int end = start;
    while (text.charAt(end) > ' ' && "=/>".indexOf(text.charAt(end)) < 0) {
      end++;
    }
    return end;
  }

  private int behindSpace(int start) {
    int end = start;
    while (text.charAt(end) <= ' ') {
      end++;
    }
    return end;
  }
}
