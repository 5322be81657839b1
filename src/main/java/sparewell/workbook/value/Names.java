package sparewell.workbook.value;

import java.text.Normalizer;
import java.util.Locale;

/** Cleans names and makes them comparable. */
public final class Names {
  private Names() {}

  /** The text without control characters and superfluous blanks, line breaks among them. */
  public static String clean(String text) {
    return isClean(text) ? text : cleaned(text);
  }

  private static boolean isClean(String text) {
    boolean blankBefore = true;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c >= 0x7f || c == ' ' && blankBefore) {
        return false;
      }
      blankBefore = c == ' ';
    }
    return !blankBefore;
  }

  private static String cleaned(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    boolean gap = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isBlank(c)) {
        gap = clean.length() > 0;
      } else if (!Character.isISOControl(c)) {
        if (gap) {
          clean.append(' ');
          gap = false;
        }
        clean.append(c);
      }
    }
    return clean.toString();
  }

  /** Returns whether there are control characters that are no blanks. */
  public static boolean hasControls(String text) {
    return text.chars().anyMatch(c -> Character.isISOControl(c) && !isBlank((char) c));
  }

  /**
   * Form in which names are compared: without case, repeated blanks and punctuation, save a point,
   * comma or stroke between two digits: 3/8 is not 3.8.
   */
  public static String fold(String text) {
    boolean ascii = text.chars().allMatch(c -> c < 0x80);
    String plain = ascii ? text : Normalizer.normalize(text, Normalizer.Form.NFKC);
    StringBuilder folded = new StringBuilder(plain.length());
    for (int i = 0; i < plain.length(); i++) {
      char c = plain.charAt(i);
      if (Character.getType(c) == Character.FORMAT || Character.isISOControl(c) && !isBlank(c)) {
        continue;
      }
      if (isNumeric(plain, i)) {
        folded.append(c == ',' ? '.' : c == '\u2044' ? '/' : c);
      } else if (isBlank(c) || isPunctuation(c)) {
        if (folded.length() > 0 && folded.charAt(folded.length() - 1) != ' ') {
          folded.append(' ');
        }
      } else {
        folded.append(c);
      }
    }
    String stripped = folded.toString().strip();
    String result = (ascii ? stripped : stripped.toUpperCase(Locale.ROOT)).toLowerCase(Locale.ROOT);
    return result.isEmpty() ? clean(plain).toLowerCase(Locale.ROOT) : result;
  }

  private static boolean isNumeric(String text, int at) {
    return ".,/\u2044".indexOf(text.charAt(at)) >= 0
        && at > 0
        && at + 1 < text.length()
        && Character.isDigit(text.charAt(at - 1))
        && Character.isDigit(text.charAt(at + 1));
  }

  private static boolean isBlank(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\u0085';
  }

  private static boolean isPunctuation(char c) {
    return switch (Character.getType(c)) {
      case Character.CONNECTOR_PUNCTUATION,
          Character.DASH_PUNCTUATION,
          Character.START_PUNCTUATION,
          Character.END_PUNCTUATION,
          Character.INITIAL_QUOTE_PUNCTUATION,
          Character.FINAL_QUOTE_PUNCTUATION,
          Character.OTHER_PUNCTUATION ->
          true;
      default -> c == '\u00d7' || c == '`' || c == '\u00b4';
    };
  }
}
