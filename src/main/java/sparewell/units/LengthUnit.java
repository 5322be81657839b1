package sparewell.units;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Units of length that a workbook may name; 1 in = 25.4 mm exactly (international inch). */
public enum LengthUnit {
  INCH(25_400.0, "in", "inch", "inches", "\""),
  FOOT(304_800.0, "ft", "foot", "feet"),
  MILLIMETRE(1_000.0, "mm"),
  CENTIMETRE(10_000.0, "cm"),
  METRE(1_000_000.0, "m", "metre", "metres", "meter", "meters");

  private final double micrometres;
  private final List<String> words;

  LengthUnit(double micrometres, String... words) {
    this.micrometres = micrometres;
    this.words = List.of(words);
  }

  public String symbol() {
    return words.get(0);
  }

  public double micrometres() {
    return micrometres;
  }

  /** The unit of that symbol, ignoring case; common long and plural forms are understood too. */
  public static Optional<LengthUnit> ofSymbol(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    return Stream.of(values()).filter(unit -> unit.words.contains(word)).findFirst();
  }
}
