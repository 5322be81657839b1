package sparewell.save;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.OwnParts.CellFormat;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/**
 * Our cell formats in the angler's styles part. Existing formats are reused, so that a repeated run
 * adds nothing; the angler's formats keep their indexes, and indexes that his cells use but his
 * part lacks get no format of ours.
 *
 * @see "ECMA-376 part 1, section 18.8 (styles)"
 */
final class OwnStyles {

  private static final int FIRST_OWN_PATTERN = 164; // lower ones are built in

  /** No program reads more cell formats; an index above is no index. */
  private static final int MOST_FORMATS = 65_490;

  /** A styles part for a workbook without one. */
  private static final String FRESH =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n<styleSheet xmlns=\""
          + XmlOut.MAIN
          + "\"></styleSheet>";

  /** First elements, whose places have a fixed meaning, of lists that the angler's part lacks. */
  private static final Map<String, List<String>> FIRST =
      Map.of(
          "fonts",
          List.of("<font><sz val=\"11\"/><name val=\"Calibri\"/><family val=\"2\"/></font>"),
          "fills",
          List.of(
              "<fill><patternFill patternType=\"none\"/></fill>",
              "<fill><patternFill patternType=\"gray125\"/></fill>"),
          "borders",
          List.of("<border><left/><right/><top/><bottom/><diagonal/></border>"),
          "cellXfs",
          List.of("<xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"/>"));

  private final XmlText theirs;
  private final boolean fresh;
  private final Map<String, StyleList> lists = new LinkedHashMap<>();
  private final Map<String, Integer> patterns = new HashMap<>();
  private int highestPattern = FIRST_OWN_PATTERN - 1;

  private OwnStyles(XmlText theirs, boolean fresh, int highestFormat) {
    this.theirs = theirs;
    this.fresh = fresh;
    for (String name : StyleList.ORDER) {
      lists.put(name, new StyleList(theirs.root(), name));
    }
    for (XmlElement pattern : lists.get("numFmts").there()) {
      patterns.putIfAbsent(pattern.value("formatCode").orElse(""), number(pattern, "numFmtId"));
    }
    keepClear(highestFormat);
  }

  static OwnStyles of(WorkbookPackage book, int highestFormat) throws WorkbookRefused {
    Optional<String> part = book.related("styles").filter(book::has);
    try {
      XmlText xml =
          part.isPresent()
              ? book.xml(part.get())
              : XmlText.parse(FRESH.getBytes(StandardCharsets.UTF_8));
      return new OwnStyles(xml, part.isEmpty(), highestFormat);
    } catch (XMLStreamException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /** Reserves every index that the angler's cells and formats use, whether it exists or not. */
  private void keepClear(int highestFormat) {
    Map<String, Integer> highest = new TreeMap<>();
    highest.put("cellXfs", highestFormat);
    for (String formats : List.of("cellXfs", "cellStyleXfs")) {
      for (XmlElement format : lists.get(formats).there()) {
        highestPattern = Math.max(highestPattern, number(format, "numFmtId"));
        for (String kind : List.of("font", "fill", "border")) {
          highest.merge(kind + "s", number(format, kind + "Id"), Math::max);
        }
      }
    }
    for (XmlElement pattern : lists.get("numFmts").there()) {
      highestPattern = Math.max(highestPattern, number(pattern, "numFmtId"));
    }
    for (XmlElement looks : lists.get("dxfs").there()) {
      looks
          .child("numFmt")
          .ifPresent(p -> highestPattern = Math.max(highestPattern, number(p, "numFmtId")));
    }
    FIRST.forEach(
        (name, first) -> {
          int most = highest.getOrDefault(name, 0);
          lists.get(name).fill(first, most < MOST_FORMATS ? most : 0);
        });
  }

  /** Index of a cell format, which is added where it is not there. */
  int index(CellFormat format) {
    Map<String, String> attributes = new TreeMap<>();
    int pattern = format.builtIn() >= 0 ? format.builtIn() : pattern(format.pattern());
    attributes.put("numFmtId", String.valueOf(pattern));
    attributes.put("fontId", String.valueOf(lists.get("fonts").index(format.font())));
    attributes.put("fillId", String.valueOf(lists.get("fills").index(format.fill())));
    attributes.put("borderId", String.valueOf(lists.get("borders").index(format.border())));
    if (lists.get("cellStyleXfs").count() > 0) {
      attributes.put("xfId", "0");
    }
    for (String kind : List.of("NumberFormat", "Font", "Fill", "Border", "Alignment")) {
      attributes.put("apply" + kind, "1");
    }
    String all =
        attributes.entrySet().stream()
            .map(a -> " " + a.getKey() + "=\"" + a.getValue() + "\"")
            .collect(Collectors.joining());
    String end = format.inside().isEmpty() ? "/>" : ">" + format.inside() + "</xf>";
    return lists.get("cellXfs").index("<xf" + all + end);
  }

  private int pattern(String code) {
    return patterns.computeIfAbsent(
        code,
        key -> {
          highestPattern++;
          String id = String.valueOf(highestPattern);
          lists.get("numFmts").index(XmlOut.tag("numFmt", "formatCode", key, "numFmtId", id));
          return highestPattern;
        });
  }

  /** Factor from our column widths to those in the angler's normal font, no unit. */
  double widthFactor() {
    return fresh ? 1 : 7.0 / NormalFont.digitPixels(theirs.root());
  }

  /** Returns whether the workbook has no styles part yet. */
  boolean fresh() {
    return fresh;
  }

  /** The part with our formats; empty where nothing had to be added. */
  Optional<byte[]> edited() {
    XmlEdits edits = new XmlEdits(theirs);
    if (theirs.root().empty()) {
      String all =
          lists.values().stream()
              .map(list -> list.whole(theirs.root()))
              .collect(Collectors.joining());
      edits.append(theirs.root(), all);
    } else {
      lists.values().forEach(list -> list.write(theirs.root(), edits));
    }
    return edits.any() ? Optional.of(edits.apply()) : Optional.empty();
  }

  private static int number(XmlElement element, String attribute) {
    return element.number(attribute).filter(n -> n < 1_000_000).orElse(0);
  }
}
