package sparewell.units;

import java.util.Locale;
import java.util.Optional;

/**
 * Units of mass that a workbook may name.
 *
 * <p>1 lb = 0.45359237 kg exactly and 1 oz = lb / 16 (international pound, agreement of 1959; also
 * NIST SP 811 appendix B).
 */
public enum MassUnit {
  OUNCE("oz", 28_349.523125),
  POUND("lb", 453_592.37),
  GRAM("g", 1_000.0),
  KILOGRAM("kg", 1_000_000.0);

  private final String symbol;
  private final double milligrams;

  MassUnit(String symbol, double milligrams) {
    this.symbol = symbol;
    this.milligrams = milligrams;
  }

  public String symbol() {
    return symbol;
  }

  public double milligrams() {
    return milligrams;
  }

  /** The unit of that symbol, ignoring case; common long and plural forms are understood too. */
  public static Optional<MassUnit> ofSymbol(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "oz", "ounce", "ounces" -> Optional.of(OUNCE);
      case "lb", "lbs", "pound", "pounds" -> Optional.of(POUND);
      case "g", "gram", "grams" -> Optional.of(GRAM);
      case "kg", "kilogram", "kilograms" -> Optional.of(KILOGRAM);
      default -> Optional.empty();
    };
  }
}
