package sparewell.workbook.grid;

/** Parses whole numbers in attributes, faster than the JDK, which throws on a fault. */
final class Digits {
  private static final int MOST = 9;

  private Digits() {}

  /** The number of up to nine digits; -1 for anything else, nothing included. */
  static int of(String text) {
    if (text == null || text.isEmpty() || text.length() > MOST) {
      return -1;
    }
    int number = 0;
    for (int i = 0; i < text.length(); i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      number = number * 10 + digit;
    }
    return number;
  }
}
