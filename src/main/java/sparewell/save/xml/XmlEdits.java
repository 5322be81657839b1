package sparewell.save.xml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;

/** Edits of one part's text; everything between them is kept. */
public final class XmlEdits {
  private record Edit(int from, int to, String text) {}

  private final XmlText xml;
  private final List<Edit> edits = new ArrayList<>();

  public XmlEdits(XmlText xml) {
    this.xml = xml;
  }

  public boolean any() {
    return !edits.isEmpty();
  }

  public void insert(int at, String text) {
    edits.add(new Edit(at, at, text));
  }

  public void remove(XmlElement element) {
    edits.add(new Edit(element.start(), element.end(), ""));
  }

  public void replace(XmlElement element, String text) {
    edits.add(new Edit(element.start(), element.end(), text));
  }

  /** Sets an attribute that has no prefix; once per element and attribute. */
  public void set(XmlElement element, String attribute, String value) {
    String text = attribute + "=\"" + XmlText.escaped(value) + "\"";
    element
        .attribute(attribute)
        .ifPresentOrElse(
            a -> edits.add(new Edit(a.start(), a.end(), text)),
            () -> insert(tagTail(element), " " + text));
  }

  /** Adds text as last children of an element; once per element. */
  public void append(XmlElement element, String fragment) {
    if (!element.empty()) {
      insert(element.endTagStart(), fragment);
      return;
    }
    int tail = tagTail(element);
    String name = element.qualified(element.name());
    edits.add(new Edit(tail, element.end(), ">" + fragment + "</" + name + ">"));
  }

  private int tagTail(XmlElement element) {
    int end = element.startTagEnd();
    return xml.text().charAt(end - 2) == '/' ? end - 2 : end - 1;
  }

  public byte[] apply() {
    List<Edit> ordered = new ArrayList<>(edits);
    ordered.sort(Comparator.comparingInt(Edit::from)); // stable: insertions keep their order
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (Edit edit : ordered) {
      if (edit.from() < from) {
        throw new IllegalStateException("edits overlap");
      }
      out.append(xml.text(), from, edit.from()).append(edit.text());
      from = edit.to();
    }
    return xml.encode(out.append(xml.text().substring(from)).toString());
  }
}
