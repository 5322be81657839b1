package sparewell.render;

/**
 * Size of text from the letter widths of the font the sheets use, because a machine without screen
 * may have no fonts to measure.
 *
 * @see "Liberation Sans Regular, which has the letter widths of Arial and Helvetica"
 */
final class TextSize {
  private static final int FIRST = ' ';
  private static final char NO_BREAK_SPACE = '\u00a0';

  /** Widths in thousandths of the font size, from the space to the tilde. */
  private static final int[] WIDTHS = {
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, // to /
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, // to ?
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, // to O
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, // to _
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, // to o
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584 // to ~
  };

  /** Width of a letter with an accent, and of letters of the other European alphabets. */
  private static final int EUROPEAN = 667;

  private static final int FULL = 1_000;

  /** An open square to cross out: 604 in Liberation Sans and Arial, more in wider fonts. */
  private static final char SQUARE = '□';

  private static final int SQUARE_WIDTH = 800;
  private static final int LAST_EUROPEAN = 0x10FF;
  private static final double BOLD = 1.09;

  private TextSize() {}

  static double width(String text, double points, boolean bold) {
    long thousandths = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      thousandths += Character.isLowSurrogate(c) ? 0 : letter(c);
    }
    return thousandths / 1_000.0 * points * (bold ? BOLD : 1);
  }

  /** Lines that a text fills when wrapped at words to a width in points, at least 1. */
  static int lines(String text, double points, boolean bold, double width) {
    int lines = 0;
    int start = 0;
    while (start <= text.length()) {
      int end = text.indexOf('\n', start);
      end = end < 0 ? text.length() : end;
      lines += linesOf(text.substring(start, end), points, bold, width);
      start = end + 1;
    }
    return lines;
  }

  private static int linesOf(String text, double points, boolean bold, double width) {
    if (width(text, points, bold) <= width) {
      return 1;
    }
    int lines = 1;
    double used = 0;
    for (int start = 0; start < text.length(); ) {
      int blank = text.indexOf(' ', start);
      int end = blank < 0 ? text.length() : blank + 1;
      double whole = width(text.substring(start, end), points, bold);
      double bare = blank < 0 ? whole : whole - width(" ", points, bold);
      if (used > 0 && used + bare > width) {
        lines++;
        used = 0;
      }
      // A word longer than a line goes on from line to line.
      int more = Math.max(0, (int) Math.ceil(bare / width) - 1);
      lines += more;
      used = more > 0 ? whole - more * width : used + whole;
      start = end;
    }
    return lines;
  }

  private static int letter(char letter) {
    if (letter == NO_BREAK_SPACE) {
      return WIDTHS[0];
    }
    if (letter >= FIRST && letter - FIRST < WIDTHS.length) {
      return WIDTHS[letter - FIRST];
    }
    if (letter == SQUARE) {
      return SQUARE_WIDTH;
    }
    return letter <= LAST_EUROPEAN ? EUROPEAN : FULL;
  }
}
