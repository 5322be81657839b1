package sparewell.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import sparewell.table.Format;

/** Numbers as written: rounded to the digits of their format, the same in CSV and sheet. */
final class ShownNumber {
  private static final MathContext LEAST_DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);
  private static final int MOST_DECIMALS = 15;

  private ShownNumber() {}

  /**
   * The number with at most the format's decimals and no trailing zeros. A probability too small
   * for them keeps three significant digits, down to 1e-15.
   */
  static BigDecimal rounded(Number number, Format format) {
    BigDecimal exact = exact(number);
    BigDecimal rounded = exact.setScale(format.csvDecimals(), RoundingMode.HALF_EVEN);
    if (format == Format.PROBABILITY && rounded.precision() < LEAST_DIGITS.getPrecision()) {
      int decimals = Math.min(MOST_DECIMALS, exact.round(LEAST_DIGITS).scale());
      rounded = exact.setScale(Math.max(decimals, format.csvDecimals()), RoundingMode.HALF_EVEN);
    }
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
  }

  /** The shortest decimal that reads back as the same number, so 0.1 rounds as 0.1. */
  private static BigDecimal exact(Number number) {
    return number instanceof BigDecimal decimal ? decimal : new BigDecimal(number.toString());
  }
}
