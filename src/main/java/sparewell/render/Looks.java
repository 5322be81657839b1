package sparewell.render;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The looks in use, numbered in order of first use, and the styles part made of them. */
final class Looks {
  private static final int FIRST_OWN_PATTERN = 164;
  private static final Map<String, Integer> BUILT_IN =
      Map.of("General", 0, "0", 1, "0.00", 2, "#,##0", 3, "#,##0.00", 4, "@", 49);
  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

  private final Map<Look, Integer> looks = new LinkedHashMap<>();
  private final Map<String, Integer> patterns = new LinkedHashMap<>();
  private final Map<Look.Face, Integer> faces = new LinkedHashMap<>();
  private final Map<String, Integer> fills = new LinkedHashMap<>();
  private final Map<Look.Edge, Integer> edges = new LinkedHashMap<>();

  Looks() {
    faces.put(Look.DEFAULT.face(), 0);
    // The first two fills are fixed by the format.
    fills.put("", 0);
    fills.put("gray125", 1);
    edges.put(Look.Edge.NONE, 0);
    index(new Look(Look.GENERAL, Look.DEFAULT.face(), "", Look.Edge.NONE, "general", false));
  }

  /** Number of a look. */
  int index(Look look) {
    Integer known = looks.get(look);
    if (known == null) {
      known = looks.size();
      looks.put(look, known);
      faces.putIfAbsent(look.face(), faces.size());
      fills.putIfAbsent(look.fill(), fills.size());
      edges.putIfAbsent(look.edge(), edges.size());
      if (!BUILT_IN.containsKey(look.pattern())) {
        patterns.putIfAbsent(look.pattern(), FIRST_OWN_PATTERN + patterns.size());
      }
    }
    return known;
  }

  /** The styles part. */
  byte[] part() {
    Xml xml = new Xml().open("styleSheet", "xmlns", MAIN);
    if (!patterns.isEmpty()) {
      xml.open("numFmts", "count", patterns.size());
      patterns.forEach((code, id) -> xml.leaf("numFmt", "numFmtId", id, "formatCode", code));
      xml.close();
    }
    xml.open("fonts", "count", faces.size());
    faces.keySet().forEach(face -> font(xml, face));
    xml.close().open("fills", "count", fills.size());
    fills.keySet().forEach(fill -> fill(xml, fill));
    xml.close().open("borders", "count", edges.size());
    edges.keySet().forEach(edge -> border(xml, edge));
    xml.close().open("cellStyleXfs", "count", 1);
    xml.leaf("xf", "numFmtId", 0, "fontId", 0, "fillId", 0, "borderId", 0).close();
    xml.open("cellXfs", "count", looks.size());
    looks.keySet().forEach(look -> format(xml, look));
    xml.close().open("cellStyles", "count", 1);
    xml.leaf("cellStyle", "name", "Normal", "xfId", 0, "builtinId", 0).close();
    return xml.close().bytes();
  }

  private void format(Xml xml, Look look) {
    Integer builtIn = BUILT_IN.get(look.pattern());
    xml.open(
        "xf",
        "numFmtId",
        builtIn == null ? patterns.get(look.pattern()) : builtIn,
        "fontId",
        faces.get(look.face()),
        "fillId",
        fills.get(look.fill()),
        "borderId",
        edges.get(look.edge()),
        "xfId",
        0,
        "applyNumberFormat",
        1,
        "applyFont",
        1,
        "applyFill",
        1,
        "applyBorder",
        1,
        "applyAlignment",
        1);
    xml.leaf(
        "alignment",
        "horizontal",
        look.across(),
        "vertical",
        look.edge() == Look.Edge.HEAD ? "bottom" : "top",
        "wrapText",
        look.wrap() ? 1 : 0,
        "indent",
        indent(look));
    if (look.edge() == Look.Edge.ENTRY) {
      xml.leaf("protection", "locked", 0); // it stays open where the angler protects the sheet
    }
    xml.close();
  }

  /** Text in tables keeps off numbers before it; headings on the right, off the filter's arrow. */
  private static int indent(Look look) {
    if (look.across().equals("right")) {
      return look.edge() == Look.Edge.HEAD ? 2 : 0;
    }
    return look.edge() == Look.Edge.NONE ? look.indent() : 1;
  }

  private static void font(Xml xml, Look.Face face) {
    xml.open("font");
    if (face.bold()) {
      xml.leaf("b");
    }
    if (face.underline()) {
      xml.leaf("u");
    }
    xml.leaf("sz", "val", face.points());
    xml.leaf("color", "rgb", "FF" + face.rgb());
    xml.leaf("name", "val", "Arial").leaf("family", "val", 2).close();
  }

  private static void fill(Xml xml, String fill) {
    xml.open("fill");
    if (fill.isEmpty() || fill.equals("gray125")) {
      xml.leaf("patternFill", "patternType", fill.isEmpty() ? "none" : fill);
    } else {
      xml.open("patternFill", "patternType", "solid");
      xml.leaf("fgColor", "rgb", "FF" + fill).leaf("bgColor", "indexed", 64).close();
    }
    xml.close();
  }

  private static void border(Xml xml, Look.Edge edge) {
    xml.open("border");
    for (String side : List.of("left", "right", "top", "bottom", "diagonal")) {
      String style = lineStyle(edge, side);
      if (style.isEmpty()) {
        xml.leaf(side);
      } else {
        boolean dark = style.equals("thin") && edge != Look.Edge.ENTRY;
        String colour = dark ? "FF404040" : "FF9AA3AD";
        xml.open(side, "style", style).leaf("color", "rgb", colour).close();
      }
    }
    xml.close();
  }

  private static String lineStyle(Look.Edge edge, String side) {
    boolean bottom = side.equals("bottom");
    boolean top = side.equals("top");
    boolean beside = side.equals("left") || side.equals("right");
    return switch (edge) {
      case NONE -> "";
      case UNDER -> bottom ? "hair" : "";
      case HEAD, HEAD_ABOVE_ARROW -> bottom ? "thin" : "";
      case SUM -> top ? "thin" : "";
      case ENTRY -> bottom || top || beside ? "thin" : "";
      case CUT_TOP -> top || beside ? "dashed" : "";
      case CUT_BOTTOM -> bottom || beside ? "dashed" : "";
    };
  }
}
