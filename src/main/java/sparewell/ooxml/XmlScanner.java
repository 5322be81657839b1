package sparewell.ooxml;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;

/** Finds the elements of a well-formed text without a DOCTYPE. */
final class XmlScanner {
  private static final int MOST_ELEMENTS = 1_000_000;

  private static final Map<String, String> OUTSIDE =
      Map.of("", "", "xml", "http://www.w3.org/XML/1998/namespace");
  private final String text;
  private final Deque<Open> open = new ArrayDeque<>();
  private XmlElement root;
  private int count;

  /** An element whose end tag was not met yet, with the namespaces of its prefixes. */
  private record Open(
      String qualified,
      int start,
      int startTagEnd,
      List<XmlElement.Attribute> attributes,
      List<XmlElement> children,
      Map<String, String> scope) {
    XmlElement closed(int endTagStart, int end) {
      String prefix = prefix(qualified);
      String namespace = scope.getOrDefault(prefix, "");
      return new XmlElement(
          prefix,
          local(qualified),
          namespace,
          start,
          startTagEnd,
          endTagStart,
          end,
          attributes,
          children);
    }
  }

  XmlScanner(String text) {
    this.text = text;
  }

  XmlElement root() throws XMLStreamException {
    try {
      int at = text.indexOf('<');
      while (at >= 0) {
        at = text.indexOf('<', piece(at));
      }
    } catch (IndexOutOfBoundsException e) {
      throw new XMLStreamException("damaged XML", e);
    }
    if (root == null || !open.isEmpty()) {
      throw new XMLStreamException("damaged XML");
    }
    return root;
  }

  private int piece(int at) throws XMLStreamException {
    if (text.startsWith("<!--", at)) {
      return behind("-->", at + 4);
    }
    if (text.startsWith("<![CDATA[", at)) {
      return behind("]]>", at);
    }
    if (text.startsWith("<?", at)) {
      return behind("?>", at);
    }
    if (text.startsWith("</", at)) {
      int end = behind(">", at);
      add(open.pop().closed(at, end));
      return end;
    }
    return startTag(at);
  }

  private int behind(String mark, int from) throws XMLStreamException {
    int at = text.indexOf(mark, from);
    if (at < 0) {
      throw new XMLStreamException("damaged XML");
    }
    return at + mark.length();
  }

  private int startTag(int at) throws XMLStreamException {
    if (++count > MOST_ELEMENTS) {
      throw new XMLStreamException("more elements than any workbook needs");
    }
    int nameEnd = nameEnd(at + 1);
    List<XmlElement.Attribute> raw = new ArrayList<>();
    int position = attributes(skipBlank(nameEnd), raw);
    boolean single = text.charAt(position) == '/';
    int end = position + (single ? 2 : 1);
    Map<String, String> scope = scope(raw);
    Open element =
        new Open(
            text.substring(at + 1, nameEnd),
            at,
            end,
            raw.stream().map(a -> inNamespace(a, scope)).toList(),
            single ? List.of() : new ArrayList<>(),
            scope);
    if (single) {
      add(element.closed(end, end));
    } else {
      open.push(element);
    }
    return end;
  }

  /** Reads attributes into a list; gives the place after them. */
  private int attributes(int from, List<XmlElement.Attribute> raw) {
    int position = from;
    while (text.charAt(position) != '>' && text.charAt(position) != '/') {
      int attributeEnd = nameEnd(position);
      int equals = skipBlank(attributeEnd);
      int quote = skipBlank(equals + 1);
      int close = text.indexOf(text.charAt(quote), quote + 1);
      String name = text.substring(position, attributeEnd);
      raw.add(
          new XmlElement.Attribute(
              prefix(name),
              local(name),
              "",
              unescape(blanks(text.substring(quote + 1, close))),
              position,
              close + 1));
      position = skipBlank(close + 1);
    }
    return position;
  }

  private void add(XmlElement element) {
    if (open.isEmpty()) {
      root = element;
    } else {
      open.peek().children().add(element);
    }
  }

  private Map<String, String> scope(List<XmlElement.Attribute> attributes) {
    Map<String, String> scope = open.isEmpty() ? OUTSIDE : open.peek().scope();
    Map<String, String> changed = null;
    for (XmlElement.Attribute a : attributes) {
      boolean plain = a.prefix().isEmpty() && a.name().equals("xmlns");
      if (plain || a.prefix().equals("xmlns")) {
        changed = changed == null ? new HashMap<>(scope) : changed;
        changed.put(plain ? "" : a.name(), a.value());
      }
    }
    return changed == null ? scope : changed;
  }

  /** Line ends and tabs of an attribute read as blanks. */
  private static String blanks(String value) {
    return value.replace('\t', ' ').replace('\n', ' ').replace('\r', ' ');
  }

  private static XmlElement.Attribute inNamespace(
      XmlElement.Attribute a, Map<String, String> scope) {
    if (a.prefix().isEmpty()) {
      return a;
    }
    String namespace = scope.getOrDefault(a.prefix(), a.prefix());
    return new XmlElement.Attribute(a.prefix(), a.name(), namespace, a.value(), a.start(), a.end());
  }

  private int nameEnd(int from) {
    int at = from;
    while (" \t\r\n=/>".indexOf(text.charAt(at)) < 0) {
      at++;
    }
    return at;
  }

  private int skipBlank(int from) {
    int at = from;
    while (Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static String prefix(String name) {
    int colon = name.indexOf(':');
    return colon < 0 ? "" : name.substring(0, colon);
  }

  private static String local(String name) {
    return name.substring(name.indexOf(':') + 1);
  }

  /** Text with the five named and the numeric references resolved. */
  static String unescape(String raw) {
    if (raw.indexOf('&') < 0) {
      return raw;
    }
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (int at = raw.indexOf('&'); at >= 0; at = raw.indexOf('&', from)) {
      int semicolon = raw.indexOf(';', at);
      if (semicolon < 0) {
        break;
      }
      out.append(raw, from, at).append(character(raw.substring(at + 1, semicolon)));
      from = semicolon + 1;
    }
    return out.append(raw.substring(from)).toString();
  }

  private static String character(String reference) {
    return switch (reference) {
      case "amp" -> "&";
      case "lt" -> "<";
      case "gt" -> ">";
      case "quot" -> "\"";
      case "apos" -> "'";
      default -> {
        boolean hex = reference.startsWith("#x");
        try {
          int code = Integer.parseInt(reference.substring(hex ? 2 : 1), hex ? 16 : 10);
          yield Character.toString(code);
        } catch (IllegalArgumentException e) {
          yield "\uFFFD";
        }
      }
    };
  }
}
