package sparewell.workbook;

import java.math.BigDecimal;

/**
 * Allowed values of a column or setting, both ends included.
 *
 * @param unit unit of both, as a unit's symbol or in words; empty for plain numbers
 */
public record Range(double least, double most, String unit) {
  public boolean holds(double amount) {
    return amount >= least && amount <= most;
  }

  /** Text of the range, like {@code 20 to 200 mm}. */
  public String words() {
    return (plain(least) + " to " + plain(most) + " " + unit).strip();
  }

  private static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
