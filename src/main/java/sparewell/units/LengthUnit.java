package sparewell.units;

import java.util.Locale;
import java.util.Optional;

/** Units of length that a workbook may name; 1 in = 25.4 mm exactly (international inch). */
public enum LengthUnit {
  INCH("in", 25_400.0),
  FOOT("ft", 304_800.0),
  MILLIMETRE("mm", 1_000.0),
  CENTIMETRE("cm", 10_000.0),
  METRE("m", 1_000_000.0);

  private final String symbol;
  private final double micrometres;

  LengthUnit(String symbol, double micrometres) {
    this.symbol = symbol;
    this.micrometres = micrometres;
  }

  public String symbol() {
    return symbol;
  }

  public double micrometres() {
    return micrometres;
  }

  /** The unit of that symbol, ignoring case; common long and plural forms are understood too. */
  public static Optional<LengthUnit> ofSymbol(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "in", "inch", "inches", "\"" -> Optional.of(INCH);
      case "ft", "foot", "feet" -> Optional.of(FOOT);
      case "mm" -> Optional.of(MILLIMETRE);
      case "cm" -> Optional.of(CENTIMETRE);
      case "m", "metre", "metres", "meter", "meters" -> Optional.of(METRE);
      default -> Optional.empty();
    };
  }
}
