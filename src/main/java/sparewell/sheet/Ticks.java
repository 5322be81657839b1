package sparewell.sheet;

import java.util.List;
import java.util.Locale;

/** What may stand in a cell to type into. */
public final class Ticks {
  private static final List<String> YES = List.of("yes", "y", "x", "true");
  private static final List<String> NO = List.of("no", "n", "false");

  private Ticks() {}

  /** Whether it says yes. */
  public static boolean isYes(Object entry) {
    return YES.contains(plain(entry).toLowerCase(Locale.ROOT));
  }

  /** Whether it says no, which is as good as nothing. */
  public static boolean isNo(Object entry) {
    return NO.contains(plain(entry).toLowerCase(Locale.ROOT));
  }

  /** A value as text; whole numbers without a point. */
  public static String plain(Object value) {
    if (value instanceof Double number && number == Math.rint(number)) {
      return String.valueOf(number.longValue());
    }
    return value.toString().strip();
  }
}
