package sparewell.workbook.value;

import java.util.Collection;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** Finds the known name that a mistyped one probably stands for. */
public final class NearMiss {
  private static final LevenshteinDistance UP_TO_TWO = new LevenshteinDistance(2);

  /** Zeros before the number of a name. */
  private static final Pattern ZEROS_AHEAD = Pattern.compile("(?<=\\p{L}|\\p{L} )0+(?=\\d)");

  private static final Pattern NO_DIGITS = Pattern.compile("\\P{Nd}+");

  private NearMiss() {}

  /**
   * Nearest of the known folded names that differs by one or two letters (one in short names), the
   * first of equals. Digits must agree: tray 1 is no slip for tray 2, nor 3/8 for 1/8, but it is
   * one for tray 01.
   */
  public static Optional<String> of(String folded, Collection<String> known) {
    Optional<String> best = Optional.empty();
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int off = lettersOff(folded, candidate);
      if (off > 0 && off < least) {
        least = off;
        best = Optional.of(candidate);
      }
    }
    return best;
  }

  /** Number of letters by which two folded names differ, 1 or 2; -1 for other names. */
  public static int lettersOff(String a, String b) {
    int longer = Math.max(a.length(), b.length());
    if (Math.abs(a.length() - b.length()) > 2 || longer < 3 || !digits(a).equals(digits(b))) {
      return -1;
    }
    int off = swapped(a, b) ? 1 : UP_TO_TWO.apply(a, b);
    return off <= (longer < 5 ? 1 : 2) ? off : -1;
  }

  /** Two neighbouring letters in the wrong order are one slip. */
  private static boolean swapped(String a, String b) {
    if (a.length() != b.length()) {
      return false;
    }
    int i = 0;
    while (i < a.length() && a.charAt(i) == b.charAt(i)) {
      i++;
    }
    return i + 1 < a.length()
        && a.charAt(i) == b.charAt(i + 1)
        && a.charAt(i + 1) == b.charAt(i)
        && a.substring(i + 2).equals(b.substring(i + 2));
  }

  private static String digits(String text) {
    return NO_DIGITS.matcher(ZEROS_AHEAD.matcher(text).replaceAll("")).replaceAll("");
  }
}
