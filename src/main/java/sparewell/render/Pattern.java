package sparewell.render;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A number's text under a spreadsheet's number pattern, to find its width. */
final class Pattern {
  private static final int GROUP = 3;

  private Pattern() {}

  /** About the text that a cell shows; text stays as it is. */
  static String shown(Object value, String pattern) {
    if (!(value instanceof Double number)) {
      return value.toString();
    }
    if (pattern.startsWith("yyyy")) {
      return pattern;
    }
    // The last section is the general one.
    String section = pattern.substring(pattern.lastIndexOf(';') + 1);
    int point = section.indexOf('.');
    int decimals =
        point < 0 ? 0 : (int) section.substring(point).chars().filter(c -> c == '0').count();
    boolean percent = section.endsWith("%");
    String digits =
        BigDecimal.valueOf(percent ? number * 100 : number)
            .setScale(decimals, RoundingMode.HALF_UP)
            .toPlainString();
    int groups = section.contains(",") ? digits.length() / GROUP : 0;
    return digits + ",".repeat(groups) + (percent ? "%" : "");
  }
}
