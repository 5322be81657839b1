package sparewell.ooxml;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
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
  private final Deque<Open> open = new ArrayDeque<>();

  /** Characters since the last start tag. */
  private final StringBuilder content = new StringBuilder();

  /** Place up to which tags have been met. */
  private int at;

  /** An element whose end was not met yet. */
  private record Open(
      String prefix,
      String name,
      String namespace,
      int start,
      int startTagEnd,
      List<XmlElement.Attribute> attributes,
      List<XmlElement> children) {
    XmlElement closed(int endTagStart, int end, CharSequence text) {
      String inside = children.isEmpty() ? text.toString() : "";
      return new XmlElement(
          prefix,
          name,
          namespace,
          start,
          startTagEnd,
          endTagStart,
          end,
          attributes,
          children,
          inside);
    }
  }

  XmlScanner(String text, XMLStreamReader xml) {
    this.text = text;
    this.xml = xml;
    this.attribute = ATTRIBUTE.matcher(text);
  }

  XmlElement root() throws XMLStreamException {
    XmlElement root = null;
    int count = 0;
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        if (++count > MOST_ELEMENTS) {
          throw new XMLStreamException("more elements than any workbook needs");
        }
        content.setLength(0);
        open.push(started());
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        root = ended(open.pop());
        if (!open.isEmpty()) {
          open.peek().children().add(root);
        }
      } else if (xml.hasText() && event != XMLStreamConstants.COMMENT) {
        content.append(xml.getText());
      }
    }
    xml.close();
    return root;
  }

  private Open started() throws XMLStreamException {
    int start = nextTag();
    at = tagEnd(start);
    return new Open(
        Objects.toString(xml.getPrefix(), ""),
        xml.getLocalName(),
        Objects.toString(xml.getNamespaceURI(), ""),
        start,
        at,
        attributes(start),
        new ArrayList<>());
  }

  private XmlElement ended(Open element) throws XMLStreamException {
    if (text.charAt(element.startTagEnd() - 2) == '/') {
      return element.closed(element.startTagEnd(), element.startTagEnd(), "");
    }
    int start = nextTag();
    at = tagEnd(start);
    return element.closed(start, at, content);
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
