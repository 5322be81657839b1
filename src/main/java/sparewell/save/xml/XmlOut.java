package sparewell.save.xml;

import java.util.Map;
import java.util.TreeMap;
import sparewell.ooxml.XmlElement;

/** XML text from values and elements. */
public final class XmlOut {
  private XmlOut() {}

  /** As the value of an attribute. */
  public static String attribute(String value) {
    return text(value).replace("\"", "&quot;").replace("\n", "&#10;").replace("\t", "&#9;");
  }

  /** As text between tags. */
  public static String text(String value) {
    return value
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\r", "&#13;");
  }

  /**
   * An element without text of its own, under the prefix of another part's main namespace. Children
   * and attributes of other namespaces are left out: they are hints that only their writer reads.
   *
   * @param changed values that replace those of the element's attributes; empty leaves one out
   */
  public static String under(String prefix, XmlElement element, Map<String, String> changed) {
    Map<String, String> attributes = plainAttributes(element);
    attributes.putAll(changed);
    attributes.values().removeIf(String::isEmpty);
    String name = prefix.isEmpty() ? element.name() : prefix + ":" + element.name();
    StringBuilder out = new StringBuilder("<").append(name);
    attributes.forEach(
        (k, v) -> out.append(' ').append(k).append("=\"").append(attribute(v)).append('"'));
    StringBuilder inside = new StringBuilder();
    for (XmlElement child : element.children()) {
      if (child.namespace().equals(element.namespace())) {
        inside.append(under(prefix, child, Map.of()));
      }
    }
    return inside.length() == 0
        ? out.append("/>").toString()
        : out.append('>').append(inside).append("</").append(name).append('>').toString();
  }

  /** A spelling of an element that is equal for elements that mean the same. */
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

  private static Map<String, String> plainAttributes(XmlElement element) {
    Map<String, String> attributes = new TreeMap<>();
    for (XmlElement.Attribute a : element.attributes()) {
      if (a.prefix().isEmpty() && !a.name().equals("xmlns")) {
        attributes.put(a.name(), a.value());
      }
    }
    return attributes;
  }
}
