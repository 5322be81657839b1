package sparewell.save.xml;

import java.util.Map;
import java.util.TreeMap;
import sparewell.ooxml.XmlElement;

/** Writes values and elements as XML text. */
public final class XmlOut {
  private XmlOut() {}

  public static String attribute(String value) {
    return text(value).replace("\"", "&quot;").replace("\n", "&#10;").replace("\t", "&#9;");
  }

  public static String text(String value) {
    return value
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\r", "&#13;");
  }

  /** Empty element with attributes, given as pairs of name and value. */
  public static String tag(String element, String... attributes) {
    StringBuilder out = new StringBuilder("<").append(element);
    for (int i = 0; i < attributes.length; i += 2) {
      String value = attribute(attributes[i + 1]);
      out.append(' ').append(attributes[i]).append("=\"").append(value).append('"');
    }
    return out.append("/>").toString();
  }

  /** Canonical text of an element: equal for elements of the same meaning. */
  public static String canonical(XmlElement element, Map<String, String> changed) {
    Map<String, String> attributes = new TreeMap<>();
    for (XmlElement.Attribute a : element.attributes()) {
      if (!a.prefix().equals("xmlns") && !(a.prefix().isEmpty() && a.name().equals("xmlns"))) {
        attributes.put(
            a.namespace().isEmpty() ? a.name() : "{" + a.namespace() + "}" + a.name(), a.value());
      }
    }
    attributes.putAll(changed);
    attributes.values().removeIf(String::isEmpty);
    StringBuilder out = new StringBuilder("<{" + element.namespace() + "}" + element.name());
    attributes.forEach(
        (k, v) -> out.append(' ').append(k).append("=\"").append(attribute(v)).append('"'));
    out.append('>');
    element.children().forEach(c -> out.append(canonical(c, Map.of())));
    return out.append("</>").toString();
  }
}
