package sparewell.sheet;

import java.util.Locale;
import java.util.Map;

/**
 * Fills for the usual words for tape colours; a word that is not here gets no fill and stands in
 * words alone.
 */
final class TapeColours {
  /**
   * The sixteen colour words of the open standard CSS (level 1) and HTML 4, and a few more of CSS
   * Color Module 3.
   */
  private static final Map<String, String> RGB =
      Map.ofEntries(
          Map.entry("aqua", "00FFFF"),
          Map.entry("black", "000000"),
          Map.entry("blue", "0000FF"),
          Map.entry("brown", "A52A2A"),
          Map.entry("fuchsia", "FF00FF"),
          Map.entry("gold", "FFD700"),
          Map.entry("gray", "808080"),
          Map.entry("green", "008000"),
          Map.entry("grey", "808080"),
          Map.entry("lime", "00FF00"),
          Map.entry("maroon", "800000"),
          Map.entry("navy", "000080"),
          Map.entry("olive", "808000"),
          Map.entry("orange", "FFA500"),
          Map.entry("pink", "FFC0CB"),
          Map.entry("purple", "800080"),
          Map.entry("red", "FF0000"),
          Map.entry("silver", "C0C0C0"),
          Map.entry("teal", "008080"),
          Map.entry("white", "FFFFFF"),
          Map.entry("yellow", "FFFF00"));

  private TapeColours() {}

  /** Six hexadecimal digits; empty where the word is not known. */
  static String rgb(String word) {
    return RGB.getOrDefault(word.strip().toLowerCase(Locale.ROOT), "");
  }
}
