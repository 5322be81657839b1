package sparewell.save;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/** One list of the angler's styles and our additions at its end. */
final class StyleList {
  /** The lists in the order that a styles part must have. */
  static final List<String> ORDER =
      List.of(
          "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst"
              .split(" "));

  static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final Pattern TAG = Pattern.compile("(</?)(?=\\w)");

  private final String name;
  private final List<XmlElement> there;
  private final List<XmlElement> all = new ArrayList<>();
  private final Map<String, List<Integer>> known = new HashMap<>();
  private final List<String> added = new ArrayList<>();
  private final Map<String, Integer> asked = new HashMap<>();

  StyleList(XmlElement root, String name) {
    this.name = name;
    there = root.child(name).map(XmlElement::children).orElse(List.of());
    all.addAll(there);
  }

  List<XmlElement> there() {
    return there;
  }

  int count() {
    return all.size();
  }

  /** Fills the places up to an index with the list's first elements. */
  void fill(List<String> first, int highest) {
    while (count() < first.size()) {
      index(first.get(count()));
    }
    if (there.isEmpty()) {
      return;
    }
    XmlElement last = parsed(first.get(first.size() - 1));
    while (count() <= highest) {
      all.add(last);
      added.add(first.get(first.size() - 1));
    }
  }

  /** Index of an element, which is added where it is not there. */
  int index(String element) {
    Integer index = asked.get(element);
    if (index == null) {
      index = found(element);
      asked.put(element, index);
    }
    return index;
  }

  private int found(String element) {
    if (known.isEmpty()) {
      for (int i = 0; i < all.size(); i++) {
        known.computeIfAbsent(hint(all.get(i)), key -> new ArrayList<>()).add(i);
      }
    }
    XmlElement own = parsed(element);
    List<Integer> alike = known.computeIfAbsent(hint(own), key -> new ArrayList<>());
    String wanted = XmlOut.canonical(own, Map.of());
    for (int at : alike) {
      if (XmlOut.canonical(all.get(at), Map.of()).equals(wanted)) {
        return at;
      }
    }
    alike.add(count());
    all.add(own);
    added.add(element);
    return count() - 1;
  }

  /** Equal for equal elements; quickly made for formats, of which there can be thousands. */
  private static String hint(XmlElement element) {
    return element.name().equals("xf")
        ? element.value("fontId") + " " + element.value("fillId") + " " + element.value("borderId")
        : XmlOut.canonical(element, Map.of());
  }

  private static XmlElement parsed(String element) {
    String whole = "<own xmlns=\"" + MAIN + "\">" + element + "</own>";
    try {
      return XmlText.parse(whole.getBytes(StandardCharsets.UTF_8)).root().children().get(0);
    } catch (XMLStreamException e) {
      throw new IllegalArgumentException("not an element: " + element, e);
    }
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
