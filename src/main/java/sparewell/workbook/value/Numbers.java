package sparewell.workbook.value;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/** Formats numbers. */
public final class Numbers {
  private static final MathContext SHOWN = new MathContext(15);
  private static final int MOST_DENOMINATOR = 64;

  private Numbers() {}

  /** Plain decimal of up to 15 significant digits, without trailing zeros. */
  public static String plain(double number) {
    return new BigDecimal(number).round(SHOWN).stripTrailingZeros().toPlainString();
  }

  /** Fraction such as 1 1/2, where the number is one with a denominator up to 64. */
  public static Optional<String> fraction(double number) {
    long whole = (long) Math.floor(number);
    for (int denominator = 2; denominator <= MOST_DENOMINATOR; denominator++) {
      double numerator = (number - whole) * denominator;
      if (number > 0 && Math.abs(numerator - Math.rint(numerator)) < 1e-6) {
        int rest = (int) Math.rint(numerator);
        return rest == 0 || rest == denominator
            ? Optional.empty()
            : Optional.of((whole == 0 ? "" : whole + " ") + rest + "/" + denominator);
      }
    }
    return Optional.empty();
  }
}
