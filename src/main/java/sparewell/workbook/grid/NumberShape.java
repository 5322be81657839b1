package sparewell.workbook.grid;

import java.util.Locale;

/** Kinds of number format that change the meaning of a number. */
public enum NumberShape {
  GENERAL,
  DATE,
  FRACTION;

  /**
   * The shape of a built-in format.
   *
   * @see "ECMA-376 part 1, section 18.8.30 numFmt: ids 14-22, 45-47 are dates and times, 12 and 13
   *     fractions; 27-36 and 50-58 are dates in East Asian locales"
   */
  static NumberShape ofBuiltIn(int id) {
    if (id == 12 || id == 13) {
      return FRACTION;
    }
    boolean date =
        id >= 14 && id <= 22
            || id >= 27 && id <= 36
            || id >= 45 && id <= 47
            || id >= 50 && id <= 58;
    return date ? DATE : GENERAL;
  }

  /** The shape of a format's pattern, judged by its first section without literals and colours. */
  static NumberShape ofPattern(String pattern) {
    String plain =
        pattern
            .replaceAll("\\\\.|_.|\\*.", "")
            .replaceAll("\"[^\"]*\"?", "")
            .replaceAll("\\[(?![hms]+\\])[^\\]]*\\]", "");
    int section = plain.indexOf(';');
    String first = (section < 0 ? plain : plain.substring(0, section)).toLowerCase(Locale.ROOT);
    if (first.contains("general")) {
      return GENERAL;
    }
    if (first.matches(".*[?#0]\\s*/\\s*[?#0-9]+.*")) {
      return FRACTION;
    }
    String letters = first.replace("am/pm", "h").replace("a/p", "h").replaceAll("e[+-]", "");
    return letters.matches(".*[dmyhs].*") ? DATE : GENERAL;
  }
}
