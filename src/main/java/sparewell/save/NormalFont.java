package sparewell.save;

import java.util.Locale;
import java.util.Map;
import sparewell.ooxml.XmlElement;

/**
 * The width of a digit in a workbook's normal font, in which all its column widths are counted.
 *
 * @see "ECMA-376 part 1, section 18.3.1.13 (column widths)"
 */
final class NormalFont {
  /** Digit width over font size, from the fonts' own tables; values from memory, to about 1 %. */
  private static final Map<String, Double> DIGIT_SHARE =
      Map.ofEntries(
          Map.entry("arial", 0.556),
          Map.entry("calibri", 0.507),
          Map.entry("cambria", 0.554),
          Map.entry("consolas", 0.55),
          Map.entry("courier new", 0.6),
          Map.entry("georgia", 0.614),
          Map.entry("helvetica", 0.556),
          Map.entry("liberation sans", 0.556),
          Map.entry("dejavu sans", 0.636),
          Map.entry("segoe ui", 0.539),
          Map.entry("tahoma", 0.546),
          Map.entry("times new roman", 0.5),
          Map.entry("trebuchet ms", 0.524),
          Map.entry("verdana", 0.636));

  private static final double USUAL_SHARE = 0.52;
  private static final double PIXELS_PER_POINT = 96.0 / 72;

  private NormalFont() {}

  /** Whole pixels of a digit at 96 dots an inch; at least 1. */
  static long digitPixels(XmlElement styles) {
    int index =
        styles
            .child("cellStyleXfs")
            .flatMap(x -> x.children().stream().findFirst())
            .flatMap(x -> x.number("fontId"))
            .orElse(0);
    XmlElement font =
        styles.child("fonts").stream()
            .flatMap(fonts -> fonts.children().stream())
            .skip(index)
            .findFirst()
            .orElse(styles);
    String name = value(font, "name", "Calibri").toLowerCase(Locale.ROOT);
    String size = value(font, "sz", "11");
    double points = size.matches("\\d{1,3}(\\.\\d+)?") ? Double.parseDouble(size) : 11;
    double share = DIGIT_SHARE.getOrDefault(name, USUAL_SHARE);
    return Math.max(1, Math.round(points * PIXELS_PER_POINT * share));
  }

  private static String value(XmlElement font, String property, String usual) {
    return font.child(property).flatMap(p -> p.value("val")).orElse(usual);
  }
}
