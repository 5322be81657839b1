package sparewell.ooxml;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Finds the elements of a text with their positions. The JDK's reader gives names and values and
 * refuses what is not well-formed; positions are found beside it, since its own are unreliable.
 */
final class XmlScanner {
  private static final int MOST_ELEMENTS = 1_000_000;
  private static final Pattern ATTRIBUTE =
      Pattern.compile("\\s([^\\s=/>]+)\\s*=\\s*(?:\"[^\"]*\"|'[^']*')");

  private final String text;
  private final XMLStreamReader xml;
  private final Matcher attribute;

  /** Characters since the last start tag. */
  private final StringBuilder content = new StringBuilder();

  /** Place up to which tags have been met. */
  private int at;

  private int count;

  XmlScanner(String text, XMLStreamReader xml) {
    this.text = text;
    this.xml = xml;
    this.attribute = ATTRIBUTE.matcher(text);
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
    int startTagEnd = tagEnd(start);
    at = startTagEnd;
    List<XmlElement.Attribute> attributes = attributes(start);
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

  private int tagEnd(int start) {
    int end = start;
    char quote = 0;
    while (quote != 0 || text.charAt(end) != '>') {
      char c = text.charAt(end++);
      if (quote == 0 && (c == '"' || c == '\'')) {
        quote = c;
      } else if (c == quote) {
        quote = 0;
      }
    }
    return end + 1;
  }

  private List<XmlElement.Attribute> attributes(int start) {
    List<XmlElement.Attribute> all = new ArrayList<>();
    attribute.region(start, at);
    int index = 0;
    while (attribute.find()) {
      String qualified = attribute.group(1);
      int colon = qualified.indexOf(':');
      String prefix = qualified.substring(0, Math.max(0, colon));
      String name = qualified.substring(colon + 1);
      boolean declares = qualified.equals("xmlns") || prefix.equals("xmlns");
      String namespace = declares ? prefix : Objects.toString(xml.getAttributeNamespace(index), "");
      String value =
          declares
              ? Objects.toString(xml.getNamespaceURI(colon < 0 ? "" : name), "")
              : xml.getAttributeValue(index++);
      all.add(
          new XmlElement.Attribute(
              prefix, name, namespace, value, attribute.start(1), attribute.end()));
    }
    return all;
  }
}
