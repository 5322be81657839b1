package sparewell.ooxml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An element of a part with its place in the text.
 *
 * <p>Not a record: children are added while the text is scanned.
 */
public final class XmlElement {
  private final String prefix;
  private final String name;
  private final String namespace;
  private final int start;
  private final int startTagEnd;
  private final List<Attribute> attributes;
  private final List<XmlElement> children = new ArrayList<>();
  private int endTagStart;
  private int end;

  XmlElement(
      String prefix,
      String name,
      String namespace,
      int start,
      int startTagEnd,
      List<Attribute> attributes) {
    this.prefix = prefix;
    this.name = name;
    this.namespace = namespace;
    this.start = start;
    this.startTagEnd = startTagEnd;
    this.attributes = List.copyOf(attributes);
  }

  void close(int newEndTagStart, int newEnd) {
    endTagStart = newEndTagStart;
    end = newEnd;
  }

  void add(XmlElement child) {
    children.add(child);
  }

  /** Prefix as written; empty if none. */
  public String prefix() {
    return prefix;
  }

  /** Name without prefix. */
  public String name() {
    return name;
  }

  /** Namespace; empty if none. */
  public String namespace() {
    return namespace;
  }

  /** Start of its start tag in the text. */
  public int start() {
    return start;
  }

  /** End of its start tag. */
  public int startTagEnd() {
    return startTagEnd;
  }

  /** Start of its end tag, or end of its only tag. */
  public int endTagStart() {
    return endTagStart;
  }

  /** End of the element in the text. */
  public int end() {
    return end;
  }

  /** Returns whether it is a single tag. */
  public boolean empty() {
    return startTagEnd == end;
  }

  /** Its attributes, namespace declarations included. */
  public List<Attribute> attributes() {
    return attributes;
  }

  /** Its child elements. */
  public List<XmlElement> children() {
    return List.copyOf(children);
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

  /** Value of an attribute without prefix. */
  public Optional<String> value(String attribute) {
    return attribute(attribute).map(Attribute::value);
  }

  /** An attribute without prefix. */
  public Optional<Attribute> attribute(String attribute) {
    return attributes.stream()
        .filter(a -> a.namespace().isEmpty() && a.name().equals(attribute))
        .findFirst();
  }

  /** Value of an attribute without prefix, where it is a whole number of up to nine digits. */
  public Optional<Integer> number(String attribute) {
    return value(attribute).filter(v -> v.matches("\\d{1,9}")).map(Integer::valueOf);
  }

  /** Value of an attribute of a namespace. */
  public Optional<String> value(String attributeNamespace, String attribute) {
    return attributes.stream()
        .filter(a -> a.namespace().equals(attributeNamespace) && a.name().equals(attribute))
        .map(Attribute::value)
        .findFirst();
  }

  /** Returns whether an attribute is true. */
  public boolean isTrue(String attribute) {
    return value(attribute).filter(v -> v.equals("1") || v.equals("true")).isPresent();
  }

  /** A name with the element's prefix. */
  public String qualified(String childName) {
    return prefix.isEmpty() ? childName : prefix + ":" + childName;
  }

  /**
   * An attribute.
   *
   * @param prefix as written; empty if none
   * @param name without prefix
   * @param namespace empty where it has no prefix
   * @param value with references resolved
   * @param start where its name begins
   * @param end just behind its closing quote
   */
  public record Attribute(
      String prefix, String name, String namespace, String value, int start, int end) {}
}
