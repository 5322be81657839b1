package sparewell.units;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Units of mass that a workbook may name.
 *
 * <p>1 lb = 0.45359237 kg exactly and 1 oz = lb / 16 (international pound, agreement of 1959; also
 * NIST SP 811 appendix B).
 */
public enum MassUnit {
  OUNCE(28_349.523125, "oz", "ounce", "ounces"),
  POUND(453_592.37, "lb", "lbs", "pound", "pounds"),
  GRAM(1_000.0, "g", "gram", "grams"),
  KILOGRAM(1_000_000.0, "kg", "kilogram", "kilograms");

  private final double milligrams;
  private final List<String> words;

  MassUnit(double milligrams, String... words) {
    this.milligrams = milligrams;
    this.words = List.of(words);
  }

  public String symbol() {
    return words.get(0);
  }

  public double milligrams() {
    return milligrams;
  }

  /** The unit of that symbol, ignoring case; common long and plural forms are understood too. */
  public static Optional<MassUnit> ofSymbol(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    return Stream.of(values()).filter(unit -> unit.words.contains(word)).findFirst();
  }
}
