package sparewell.save.xml;

import java.util.Map;
import java.util.TreeMap;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;

/** Writes values and elements as XML text. */
public final class XmlOut {
  public static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

  private XmlOut() {}

  /** Empty element with attributes, given as pairs of name and value. */
  public static String tag(String element, String... attributes) {
    StringBuilder out = new StringBuilder("<").append(element);
    for (int i = 0; i < attributes.length; i += 2) {
      String value = XmlText.escaped(attributes[i + 1]);
      out.append(' ').append(attributes[i]).append("=\"").append(value).append('"');
    }
    return out.append("/>").toString();
  }

  /** The same for elements of the same meaning. */
  public static String canonical(XmlElement element) {
    return canonical(element, Map.of());
  }

  /**
   * Canonical text of an element with other values of some attributes, empty for none: without
   * prefixes, its attributes in the order of their names, other namespaces than that of sheets in
   * braces.
   */
  public static String canonical(XmlElement element, Map<String, String> changed) {
    Map<String, String> attributes = new TreeMap<>();
    for (XmlElement.Attribute a : element.attributes()) {
      if (!a.prefix().equals("xmlns") && !(a.prefix().isEmpty() && a.name().equals("xmlns"))) {
        attributes.put(braced(a.namespace()) + a.name(), a.value());
      }
    }
    attributes.putAll(changed);
    attributes.values().removeIf(String::isEmpty);
    String name = braced(element.namespace()) + element.name();
    StringBuilder out = new StringBuilder("<" + name);
    attributes.forEach(
        (k, v) -> out.append(' ').append(k).append("=\"").append(XmlText.escaped(v)).append('"'));
    if (element.children().isEmpty()) {
      return out.append("/>").toString();
    }
    out.append('>');
    element.children().forEach(child -> out.append(canonical(child)));
    return out.append("</").append(name).append('>').toString();
  }

  private static String braced(String namespace) {
    return namespace.isEmpty() || namespace.equals(MAIN) ? "" : "{" + namespace + "}";
  }
}
