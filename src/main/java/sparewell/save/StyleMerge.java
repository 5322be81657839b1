package sparewell.save;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/**
 * Our cell formats in the angler's styles part. A format that is already there is used again, so a
 * repeated run adds nothing; what the angler has keeps its index.
 *
 * @see "ECMA-376 part 1, section 18.8 (styles)"
 */
final class StyleMerge {
  /** Sections in the order that a styles part must have. */
  private static final List<String> ORDER =
      List.of(
          "numFmts",
          "fonts",
          "fills",
          "borders",
          "cellStyleXfs",
          "cellXfs",
          "cellStyles",
          "dxfs",
          "tableStyles",
          "colors",
          "extLst");

  private static final int FIRST_OWN_FORMAT = 164; // lower ones are built in

  private final XmlText theirs;
  private final XmlElement ours;
  private final String prefix;
  private final Map<String, Section> sections = new LinkedHashMap<>();
  private final Map<Integer, Integer> numberFormats = new HashMap<>();
  private final int[] cellFormats;
  private final int[] differentialFormats;
  private final double widthFactor;

  StyleMerge(XmlText theirs, XmlText ours) {
    this.theirs = theirs;
    this.ours = ours.root();
    this.prefix = theirs.root().prefix();
    for (String name : ORDER) {
      sections.put(name, new Section(name));
    }
    // All at once, in our order: afterwards nothing changes, and sheets can be written in parallel.
    cellFormats = new int[children(this.ours, "cellXfs").size()];
    for (int i = 1; i < cellFormats.length; i++) { // format 0 is the workbook's own
      cellFormats[i] = addCellFormat(i);
    }
    differentialFormats = new int[children(this.ours, "dxfs").size()];
    for (int i = 0; i < differentialFormats.length; i++) {
      differentialFormats[i] = sections.get("dxfs").add(our("dxfs", i), Map.of());
    }
    widthFactor =
        (double) NormalFont.digitPixels(this.ours) / NormalFont.digitPixels(theirs.root());
  }

  /** The index in the angler's part of one of our cell formats; format 0 is the workbook's own. */
  int cellFormat(int index) {
    return cellFormats[index];
  }

  /** The index in the angler's part of one of our differential formats. */
  int differentialFormat(int index) {
    return differentialFormats[index];
  }

  /** What our column widths are multiplied with to be as wide in the angler's normal font. */
  double widthFactor() {
    return widthFactor;
  }

  private XmlElement ourNumberFormat(int id) {
    return children(ours, "numFmts").stream()
        .filter(f -> number(f, "numFmtId") == id)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no number format " + id));
  }

  private int addCellFormat(int index) {
    XmlElement format = our("cellXfs", index);
    Map<String, String> changed = new TreeMap<>();
    changed.put("numFmtId", String.valueOf(numberFormat(number(format, "numFmtId"))));
    for (String kind : List.of("font", "fill", "border")) {
      int at = number(format, kind + "Id");
      changed.put(kind + "Id", String.valueOf(shared(kind + "s", at)));
      changed.put(
          "apply" + kind.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + kind.substring(1),
          "1");
    }
    changed.put("applyNumberFormat", "1");
    changed.put("xfId", sections.get("cellStyleXfs").known.isEmpty() ? "" : "0");
    Section cells = sections.get("cellXfs");
    if (cells.count() == 0) {
      cells.add(
          our("cellXfs", 0), Map.of("xfId", "", "fontId", "0", "fillId", "0", "borderId", "0"));
    }
    return cells.add(format, changed);
  }

  private int shared(String section, int index) {
    Section to = sections.get(section);
    for (int i = 0; to.count() < (section.equals("fills") ? 2 : 1); i++) {
      to.force(our(section, i)); // the first ones have a fixed meaning
    }
    return to.add(our(section, index), Map.of());
  }

  private int numberFormat(int id) {
    if (id < FIRST_OWN_FORMAT) {
      return id;
    }
    return numberFormats.computeIfAbsent(id, this::addNumberFormat);
  }

  private int addNumberFormat(int id) {
    XmlElement format = ourNumberFormat(id);
    String code = format.value("formatCode").orElse("");
    Section formats = sections.get("numFmts");
    int highest = FIRST_OWN_FORMAT - 1;
    for (XmlElement existing : children(theirs.root(), "numFmts")) {
      if (existing.value("formatCode").filter(code::equals).isPresent()) {
        return number(existing, "numFmtId");
      }
      highest = Math.max(highest, number(existing, "numFmtId"));
    }
    int free = highest + 1 + formats.added.size();
    formats.add(format, Map.of("numFmtId", String.valueOf(free)));
    return free;
  }

  /** The part with our formats; empty where nothing had to be added. */
  Optional<byte[]> edited() {
    XmlEdits edits = new XmlEdits(theirs);
    if (theirs.root().empty()) {
      String all = sections.values().stream().map(Section::whole).collect(Collectors.joining());
      edits.append(theirs.root(), all);
    } else {
      sections.values().forEach(s -> s.write(edits));
    }
    return edits.any() ? Optional.of(edits.apply()) : Optional.empty();
  }

  private XmlElement our(String section, int index) {
    List<XmlElement> all = children(ours, section);
    if (index < 0 || index >= all.size()) {
      throw new IllegalArgumentException("our styles lack " + section + " " + index);
    }
    return all.get(index);
  }

  private static List<XmlElement> children(XmlElement root, String section) {
    return root.child(section).map(XmlElement::children).orElseGet(List::of);
  }

  private static int number(XmlElement element, String attribute) {
    return element
        .value(attribute)
        .filter(v -> v.matches("\\d{1,9}"))
        .map(Integer::valueOf)
        .orElse(0);
  }

  /** One list of the angler's, and what we add to its end. */
  private final class Section {
    private final String name;
    private final List<String> known = new ArrayList<>();
    private final List<String> added = new ArrayList<>();

    Section(String name) {
      this.name = name;
      children(theirs.root(), name).forEach(e -> known.add(XmlOut.canonical(e, Map.of())));
    }

    int count() {
      return known.size();
    }

    int add(XmlElement element, Map<String, String> changed) {
      int at = known.indexOf(XmlOut.canonical(element, changed));
      if (at >= 0) {
        return at;
      }
      known.add(XmlOut.canonical(element, changed));
      added.add(XmlOut.under(prefix, element, changed));
      return known.size() - 1;
    }

    void force(XmlElement element) {
      known.add(XmlOut.canonical(element, Map.of()));
      added.add(XmlOut.under(prefix, element, Map.of()));
    }

    void write(XmlEdits edits) {
      if (added.isEmpty()) {
        return;
      }
      Optional<XmlElement> there = theirs.root().child(name);
      if (there.isPresent()) {
        edits.append(there.get(), String.join("", added));
        if (there.get().value("count").isPresent()) {
          edits.set(there.get(), "count", String.valueOf(known.size()));
        }
        return;
      }
      int position = ORDER.indexOf(name);
      Optional<XmlElement> next =
          theirs.root().children().stream()
              .filter(c -> ORDER.indexOf(c.name()) > position)
              .findFirst();
      edits.insert(next.map(XmlElement::start).orElse(theirs.root().endTagStart()), whole());
    }

    /** The list by itself, where the angler's part has none; empty where nothing is added. */
    String whole() {
      String tag = theirs.root().qualified(name);
      return added.isEmpty()
          ? ""
          : "<"
              + tag
              + " count=\""
              + known.size()
              + "\">"
              + String.join("", added)
              + "</"
              + tag
              + ">";
    }
  }
}
