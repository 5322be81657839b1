package sparewell.ooxml;

import java.util.List;
import java.util.Optional;

/**
 * An element of a part with its place in the text.
 *
 * @param prefix prefix as written; empty if none
 * @param namespace namespace; empty if none
 * @param start start of its start tag
 * @param startTagEnd end of its start tag
 * @param endTagStart start of its end tag, or end of its only tag
 * @param attributes its attributes, namespace declarations included
 * @param content the characters between its tags, with references resolved; empty where it has
 *     child elements
 */
public record XmlElement(
    String prefix,
    String name,
    String namespace,
    int start,
    int startTagEnd,
    int endTagStart,
    int end,
    List<Attribute> attributes,
    List<XmlElement> children,
    String content) {
  public XmlElement {
    attributes = List.copyOf(attributes);
    children = List.copyOf(children);
  }

  public boolean empty() {
    return startTagEnd == end;
  }

  /** Its children of a name in its own namespace. */
  public List<XmlElement> children(String childName) {
    return children.stream()
        .filter(c -> c.name.equals(childName) && c.namespace.equals(namespace))
        .toList();
  }

  /** Its first child of a name in its own namespace. */
  public Optional<XmlElement> child(String childName) {
    return children(childName).stream().findFirst();
  }

  public Optional<String> value(String attribute) {
    return attribute(attribute).map(Attribute::value);
  }

  public Optional<Attribute> attribute(String attribute) {
    return attributes.stream()
        .filter(a -> a.namespace().isEmpty() && a.name().equals(attribute))
        .findFirst();
  }

  /** Value of an attribute without prefix, where it is a whole number of up to nine digits. */
  public Optional<Integer> number(String attribute) {
    return value(attribute).filter(v -> v.matches("\\d{1,9}")).map(Integer::valueOf);
  }

  public Optional<String> value(String attributeNamespace, String attribute) {
    return attributes.stream()
        .filter(a -> a.namespace().equals(attributeNamespace) && a.name().equals(attribute))
        .map(Attribute::value)
        .findFirst();
  }

  public boolean isTrue(String attribute) {
    return value(attribute).filter(v -> v.equals("1") || v.equals("true")).isPresent();
  }

  public String qualified(String childName) {
    return prefix.isEmpty() ? childName : prefix + ":" + childName;
  }

  /**
   * An attribute, its value with references resolved, from its name to behind its closing quote.
   */
  public record Attribute(
      String prefix, String name, String namespace, String value, int start, int end) {}
}
