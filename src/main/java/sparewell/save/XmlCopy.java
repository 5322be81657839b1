package sparewell.save;

import java.io.IOException;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Writes the events of one of our own parts as text again. */
final class XmlCopy {
  private XmlCopy() {}

  /** Changes attributes on the way. */
  interface Attributes {
    /** The new value of an attribute; null leaves it out. */
    String value(String element, String attribute, String value);
  }

  static void startTag(XMLStreamReader in, Attributes attributes, Appendable out)
      throws IOException {
    out.append('<').append(name(in.getPrefix(), in.getLocalName()));
    for (int i = 0; i < in.getNamespaceCount(); i++) {
      String prefix = in.getNamespacePrefix(i);
      String uri = in.getNamespaceURI(i);
      out.append(prefix == null || prefix.isEmpty() ? " xmlns" : " xmlns:" + prefix)
          .append("=\"")
          .append(XmlOut.attribute(uri == null ? "" : uri))
          .append('"');
    }
    for (int i = 0; i < in.getAttributeCount(); i++) {
      String attribute = name(in.getAttributePrefix(i), in.getAttributeLocalName(i));
      String value = attributes.value(in.getLocalName(), attribute, in.getAttributeValue(i));
      if (value != null) {
        out.append(' ').append(attribute).append("=\"").append(XmlOut.attribute(value)).append('"');
      }
    }
    out.append('>');
  }

  /** Writes an event that is no start tag. */
  static void other(XMLStreamReader in, Appendable out) throws IOException {
    switch (in.getEventType()) {
      case XMLStreamConstants.END_ELEMENT ->
          out.append("</").append(name(in.getPrefix(), in.getLocalName())).append('>');
      case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE ->
          out.append(XmlOut.text(in.getText()));
      default -> {
        // Comments and instructions of the writer's library carry nothing.
      }
    }
  }

  /** Writes what stands inside the element just entered, and leaves the reader at its end. */
  static String inside(XMLStreamReader in) throws XMLStreamException, IOException {
    StringBuilder out = new StringBuilder();
    for (int depth = 1; ; ) {
      int event = in.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        depth++;
        startTag(in, (element, attribute, value) -> value, out);
      } else {
        if (event == XMLStreamConstants.END_ELEMENT && --depth == 0) {
          return out.toString();
        }
        other(in, out);
      }
    }
  }

  private static String name(String prefix, String local) {
    return prefix == null || prefix.isEmpty() ? local : prefix + ":" + local;
  }
}
