package sparewell.render;

import java.util.HashMap;
import java.util.Map;
import sparewell.save.OwnParts;
import sparewell.save.OwnParts.CellFormat;

/** The looks in use as cell formats of the workbook. */
final class Looks {
  private static final Map<String, Integer> BUILT_IN =
      Map.of("General", 0, "0", 1, "0.00", 2, "#,##0", 3, "#,##0.00", 4, "@", 49);

  private final OwnParts book;
  private final Map<Look, Integer> looks = new HashMap<>();

  Looks(OwnParts book) {
    this.book = book;
  }

  int index(Look look) {
    return looks.computeIfAbsent(look, fresh -> book.cellFormat(format(fresh)));
  }

  private static CellFormat format(Look look) {
    boolean entry = look.edge() == Look.Edge.ENTRY;
    String alignment =
        Xml.filled("alignment", look.across(), indent(look), down(look), look.wrap());
    return new CellFormat(
        look.pattern(),
        BUILT_IN.getOrDefault(look.pattern(), -1),
        font(look.face()),
        look.fill().isEmpty() ? Xml.filled("no fill") : Xml.filled("fill", look.fill()),
        border(look.edge()),
        // An entry stays open where the angler protects the sheet.
        alignment + (entry ? "<protection locked=\"0\"/>" : ""));
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

  private static String font(Look.Face face) {
    String bold = face.bold() ? "<b/>" : "";
    String underlined = face.underline() ? "<u/>" : "";
    return Xml.filled("font", bold, underlined, face.points(), face.rgb());
  }

  private static String border(Look.Edge edge) {
    return Xml.filled(
        "border", side(edge, "left"), side(edge, "right"), side(edge, "top"), side(edge, "bottom"));
  }

  private static String side(Look.Edge edge, String side) {
    String style = lineStyle(edge, side);
    boolean dark = style.equals("thin") && edge != Look.Edge.ENTRY;
    return style.isEmpty()
        ? "<" + side + "/>"
        : Xml.filled("side", side, style, dark ? "FF404040" : "FF9AA3AD");
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
