package sparewell.render;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sparewell.ooxml.NewSheets;
import sparewell.ooxml.NewSheets.CellFormat;

/** The looks in use as cell formats of the workbook. */
final class Looks {
  private static final Map<String, Integer> BUILT_IN =
      Map.of("General", 0, "0", 1, "0.00", 2, "#,##0", 3, "#,##0.00", 4, "@", 49);

  private final NewSheets book;
  private final Map<Look, Integer> looks = new HashMap<>();

  Looks(NewSheets book) {
    this.book = book;
  }

  int index(Look look) {
    Integer known = looks.get(look);
    if (known == null) {
      known = book.cellFormat(format(look));
      looks.put(look, known);
    }
    return known;
  }

  private static CellFormat format(Look look) {
    return new CellFormat(
        look.pattern(),
        BUILT_IN.getOrDefault(look.pattern(), -1),
        Xml.fragment(xml -> font(xml, look.face())),
        Xml.fragment(xml -> fill(xml, look.fill())),
        Xml.fragment(xml -> border(xml, look.edge())),
        Xml.fragment(xml -> inside(xml, look)));
  }

  private static void inside(Xml xml, Look look) {
    xml.leaf(
        "alignment horizontal='{}' vertical='{}' wrapText='{}' indent='{}'",
        look.across(),
        down(look),
        look.wrap(),
        indent(look));
    if (look.edge() == Look.Edge.ENTRY) {
      xml.leaf("protection locked='0'"); // it stays open where the angler protects the sheet
    }
  }

  /** Letters keep off the lines above and below where rows are high enough to write in. */
  private static String down(Look look) {
    boolean largePrint = look.face().points() > Look.HEADING.face().points();
    return switch (look.edge()) {
      case HEAD -> "bottom";
      case UNDER_ROOM, ENTRY -> "center";
      default -> largePrint ? "center" : "top";
    };
  }

  /** Text in tables keeps off numbers before it. */
  private static int indent(Look look) {
    return look.edge() == Look.Edge.NONE || look.across().equals("right") ? look.indent() : 1;
  }

  private static void font(Xml xml, Look.Face face) {
    xml.open("font");
    if (face.bold()) {
      xml.leaf("b");
    }
    if (face.underline()) {
      xml.leaf("u");
    }
    xml.leaf("sz val='{}'", face.points());
    xml.leaf("color rgb='{}'", "FF" + face.rgb());
    xml.leaf("name val='Arial'").leaf("family val='2'").close();
  }

  private static void fill(Xml xml, String fill) {
    xml.open("fill");
    if (fill.isEmpty()) {
      xml.leaf("patternFill patternType='none'");
    } else {
      xml.open("patternFill patternType='solid'");
      xml.leaf("fgColor rgb='{}'", "FF" + fill).leaf("bgColor indexed='64'").close();
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
        xml.open(side + " style='{}'", style).leaf("color rgb='{}'", colour).close();
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
      case UNDER, UNDER_ROOM -> bottom ? "hair" : "";
      case HEAD -> bottom ? "thin" : "";
      case SUM -> top ? "thin" : "";
      case ENTRY -> bottom || top || beside ? "thin" : "";
      case CUT_TOP -> top || beside ? "dashed" : "";
      case CUT_BOTTOM -> bottom || beside ? "dashed" : "";
    };
  }
}
