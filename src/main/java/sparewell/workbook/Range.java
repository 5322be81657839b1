package sparewell.workbook;

import java.math.BigDecimal;

/**
 * What the values of a column or setting may be.
 *
 * @param least least allowed
 * @param most most allowed
 * @param unit unit of both, as a unit's symbol or in words; empty for plain numbers
 */
public record Range(double least, double most, String unit) {
  /** Whether an amount, in the unit, is allowed; the ends are. */
  public boolean holds(double amount) {
    return amount >= least && amount <= most;
  }

  /** Like {@code 20 to 200 mm}. */
  public String words() {
    return (plain(least) + " to " + plain(most) + " " + unit).strip();
  }

  private static String plain(double number) {
    BigDecimal shown = BigDecimal.valueOf(number).stripTrailingZeros();
    return shown.signum() == 0 ? "0" : shown.toPlainString();
  }
}
