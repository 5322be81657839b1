package sparewell.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;

/** Formats of values: unit in the heading, number pattern in a sheet, decimals in CSV. */
public enum Format {
  TEXT("", "", "@", "@", 0),
  COUNT("", "", "0", "0", 0),
  /** Hours, one decimal in a sheet. */
  HOURS("", "", "0.0", "0.0", 4),
  /** Pure number such as a rate or a multiplier, two decimals in a sheet. */
  NUMBER("", "", "0.00", "0.00", 8),
  /** Probability or share in 0..1, shown as percent in a sheet. */
  PROBABILITY("", "", Patterns.SHARE, Patterns.SHARE, 8),
  PERCENT("", "", "0.0", "0.0", 6),
  MONEY("", "", "#,##0.00", "#,##0.00", 2),
  /** Mass of boxes, compartments and loads; more decimals would show the rounding to milligrams. */
  MASS("lb", "kg", "0.0", "0.00", 5),
  /** Mass of one item; more decimals would show the rounding to milligrams. */
  ITEM_MASS("oz", "g", "0.00", "0.0", 4),
  /** Station or side offset. */
  LENGTH("in", "cm", "0.0", "0.0", 6),
  /** Moment in kg m, shown in lb in or kg cm. */
  MOMENT("lb_in", "kg_cm", "#,##0", "#,##0", 4),
  YES_NO("", "", "@", "@", 0),
  DATE("", "", "yyyy-mm-dd", "yyyy-mm-dd", 0);

  /** Patterns with cases; an enum's own constants are not there when its values are made. */
  private static final class Patterns {
    /** A small chance is not shown as none. */
    static final String SHARE = "[=0]0.0%;[<0.0005]\"<0.1%\";0.0%";
  }

  private static final double KG_M_PER_LB_IN =
      MassUnit.POUND.milligrams() * 1e-6 * LengthUnit.INCH.micrometres() * 1e-6;

  private static final MathContext LEAST_DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);
  private static final int MOST_DECIMALS = 15;

  private final String usUnit;
  private final String metricUnit;
  private final String usPattern;
  private final String metricPattern;
  private final int csvDecimals;

  Format(
      String usUnit, String metricUnit, String usPattern, String metricPattern, int csvDecimals) {
    this.usUnit = usUnit;
    this.metricUnit = metricUnit;
    this.usPattern = usPattern;
    this.metricPattern = metricPattern;
    this.csvDecimals = csvDecimals;
  }

  public <R> Column<R> column(
      String csvName, String heading, String meaning, Function<R, ?> value) {
    return new Column<>(
        csvName,
        heading,
        this,
        meaning,
        value,
        row -> Tone.NONE,
        row -> Optional.empty(),
        false,
        false,
        row -> Optional.empty());
  }

  public <R> Column<R> onSheet(String heading, String meaning, Function<R, ?> value) {
    return column("", heading, meaning, value);
  }

  public <R> Column<R> inFile(String csvName, Function<R, ?> value) {
    return column(csvName, "", "", value);
  }

  /** Suffix of a CSV column's name, such as {@code lb_in}; empty where the value has no unit. */
  public String csvUnit(UnitSystem units) {
    return units == UnitSystem.US ? usUnit : metricUnit;
  }

  /** Unit as shown in headings, such as {@code lb·in} or {@code %}; empty where there is none. */
  public String shownUnit(UnitSystem units) {
    return this == PERCENT ? "%" : csvUnit(units).replace('_', '·');
  }

  public String pattern(UnitSystem units) {
    return units == UnitSystem.US ? usPattern : metricPattern;
  }

  /** Pattern for numbers of at least 0, with a dash for those that would show as 0. */
  String quietPattern(UnitSystem units) {
    String usual = pattern(units);
    if (this == PROBABILITY) {
      return usual.replaceFirst("0\\.0%", "\"–\"");
    }
    int decimals = Math.max(0, usual.length() - 1 - usual.indexOf('.'));
    String least = usual.contains(".") ? "0." + "0".repeat(decimals) + "5" : "0.5";
    return "[<" + least + "]\"–\";" + usual;
  }

  /**
   * The number with at most the format's decimals and no trailing zeros, the same in CSV and sheet.
   * A probability too small for them keeps three significant digits, down to 1e-15.
   */
  public BigDecimal rounded(Number number) {
    // The shortest decimal that reads back as the same number, so 0.1 rounds as 0.1.
    BigDecimal exact =
        number instanceof BigDecimal decimal ? decimal : new BigDecimal(number.toString());
    BigDecimal rounded = exact.setScale(csvDecimals, RoundingMode.HALF_EVEN);
    if (this == PROBABILITY && rounded.precision() < LEAST_DIGITS.getPrecision()) {
      int decimals = Math.min(MOST_DECIMALS, exact.round(LEAST_DIGITS).scale());
      rounded = exact.setScale(Math.max(decimals, csvDecimals), RoundingMode.HALF_EVEN);
    }
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
  }

  /**
   * The value as shown: a {@link Double}, {@link Long}, {@link BigDecimal}, {@link LocalDate} or
   * {@link String}; empty where it is not known.
   */
  public Optional<Object> shown(Object value, UnitSystem units) {
    if (value instanceof Optional<?> optional) {
      return optional.flatMap(inner -> shown(inner, units));
    }
    if (value instanceof OptionalDouble optional) {
      return optional.isPresent() ? shown(optional.getAsDouble(), units) : Optional.empty();
    }
    if (value instanceof OptionalInt optional) {
      return optional.isPresent() ? shown(optional.getAsInt(), units) : Optional.empty();
    }
    if (value instanceof Mass mass) {
      return Optional.of(mass.in(this == ITEM_MASS ? units.itemMass() : units.loadMass()));
    }
    if (value instanceof Length length) {
      return Optional.of(length.in(units.length()));
    }
    if (value instanceof Boolean yes) {
      return Optional.of(yes ? "yes" : "no");
    }
    if (value instanceof Integer whole) {
      return Optional.of(whole.longValue());
    }
    if (value instanceof Double number) {
      if (!Double.isFinite(number)) {
        throw new IllegalArgumentException("not a finite number to show: " + number);
      }
      return Optional.of(this == MOMENT ? (Object) moment(number, units) : value);
    }
    return Optional.of(value);
  }

  private static double moment(double kgM, UnitSystem units) {
    return units == UnitSystem.US ? kgM / KG_M_PER_LB_IN : kgM * 100;
  }
}
