package sparewell.check;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in findings. */
final class Shown {
  private static final MathContext DIGITS = new MathContext(4);

  private Shown() {}

  /** The number to four digits, without trailing zeros. */
  static String of(double number) {
    return new BigDecimal(number).round(DIGITS).stripTrailingZeros().toPlainString();
  }
}
