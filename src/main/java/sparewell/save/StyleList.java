package sparewell.save;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import sparewell.ooxml.XmlElement;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/** One list of the angler's styles and our additions at its end. */
final class StyleList {
  /** The lists in the order that a styles part must have. */
  static final List<String> ORDER =
      List.of(
          "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst"
              .split(" "));

  private static final Pattern TAG = Pattern.compile("(</?)(?=\\w)");

  private final String name;
  private final List<XmlElement> there;
  private final Map<String, Integer> known = new HashMap<>();
  private final List<String> added = new ArrayList<>();

  StyleList(XmlElement root, String name) {
    this.name = name;
    there = root.child(name).map(XmlElement::children).orElse(List.of());
  }

  List<XmlElement> there() {
    return there;
  }

  int count() {
    return there.size() + added.size();
  }

  /** Fills the places up to an index with the list's first elements. */
  void fill(List<String> first, int highest) {
    while (count() < first.size()) {
      added.add(first.get(count()));
    }
    while (!there.isEmpty() && count() <= highest) {
      added.add(first.get(first.size() - 1));
    }
  }

  /**
   * Index of an element, which is added where it is not there.
   *
   * @param element without prefixes, its attributes in the order of their names
   */
  int index(String element) {
    if (known.isEmpty()) {
      int at = 0;
      for (XmlElement one : there) {
        known.putIfAbsent(XmlOut.canonical(one), at++);
      }
      for (String one : added) {
        known.putIfAbsent(one, at++);
      }
    }
    return known.computeIfAbsent(
        element,
        key -> {
          added.add(element);
          return count() - 1;
        });
  }

  void write(XmlElement root, XmlEdits edits) {
    if (added.isEmpty()) {
      return;
    }
    Optional<XmlElement> list = root.child(name);
    if (list.isPresent()) {
      edits.append(list.get(), prefixed(root));
      if (list.get().value("count").isPresent()) {
        edits.set(list.get(), "count", String.valueOf(count()));
      }
      return;
    }
    int position = ORDER.indexOf(name);
    Optional<XmlElement> next =
        root.children().stream().filter(c -> ORDER.indexOf(c.name()) > position).findFirst();
    edits.insert(next.map(XmlElement::start).orElse(root.endTagStart()), whole(root));
  }

  /** The list by itself, where the angler's part has none; empty where nothing is added. */
  String whole(XmlElement root) {
    String tag = root.qualified(name);
    return added.isEmpty()
        ? ""
        : "<" + tag + " count=\"" + count() + "\">" + prefixed(root) + "</" + tag + ">";
  }

  private String prefixed(XmlElement root) {
    String all = String.join("", added);
    return root.prefix().isEmpty() ? all : TAG.matcher(all).replaceAll("$1" + root.prefix() + ":");
  }
}
