package sparewell.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Quantities as text for a sentence, in the angler's units. */
public final class Spoken {
  /** Smaller amounts are rounding errors, in any of the units. */
  private static final double LEAST = 1e-3;

  private Spoken() {}

  /** Mass as text, like {@code 12.3 lb} or {@code 5.58 kg}. */
  public static String mass(Mass mass, UnitSystem units) {
    return units == UnitSystem.US
        ? text("%.1f lb", mass.in(MassUnit.POUND))
        : text("%.2f kg", mass.in(MassUnit.KILOGRAM));
  }

  /** Absolute value of a mass, or of a difference of two, in kg. */
  public static String mass(double kg, UnitSystem units) {
    return mass(Mass.of(Math.abs(kg), MassUnit.KILOGRAM), units);
  }

  /** Length as text, like {@code 84.2 in} or {@code 213.9 cm}. */
  public static String length(Length length, UnitSystem units) {
    return units == UnitSystem.US
        ? text("%.1f in", length.in(LengthUnit.INCH))
        : text("%.1f cm", length.in(LengthUnit.CENTIMETRE));
  }

  /** A moment in kg m, like {@code 120 lb·in} or {@code 138 kg·cm}. */
  public static String moment(double kgM, UnitSystem units) {
    double kgMPerLbIn = Mass.of(1, MassUnit.POUND).in(MassUnit.KILOGRAM) * 0.0254;
    return units == UnitSystem.US
        ? text("%.0f lb·in", kgM / kgMPerLbIn)
        : text("%.0f kg·cm", kgM * 100);
  }

  /** A volume in litres, like {@code 412 in³} or {@code 6.8 l}. */
  public static String volume(double litres, UnitSystem units) {
    return units == UnitSystem.US
        ? text("%.0f in³", litres * 1e6 / (25.4 * 25.4 * 25.4))
        : text("%.1f l", litres);
  }

  private static String text(String pattern, double value) {
    String usual = String.format(Locale.ROOT, pattern, value);
    // A limit exceeded by a little must not read as exceeded by 0.
    boolean vanishes = Math.abs(value) >= LEAST && !usual.matches(".*[1-9].*");
    return vanishes
        ? new BigDecimal(value).round(new MathContext(1)).toPlainString()
            + usual.substring(usual.indexOf(' '))
        : usual;
  }
}
