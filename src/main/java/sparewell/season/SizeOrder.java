package sparewell.season;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sizes from small to large: those with a figure by what it measures (1/4, 3/8, 1/2, 1 1/2; of
 * hooks 1, 2/0, 3/0), then S, M and L, then other words; what measures the same by its text.
 */
final class SizeOrder {
  private static final Pattern FIGURE =
      Pattern.compile(
          "\\W?(\\d{1,6}(?:[.,]\\d{1,6})?)(?:(?:\\s+(\\d{1,3}))?/(\\d{1,3}))?(?!\\d).*");

  private static final List<String> LETTERS = List.of("XXS", "XS", "S", "M", "L", "XL", "XXL");

  /** Sizes of hooks with a nought come after those without. */
  private static final double NOUGHT = 1e7;

  private static final double WORDS = 1e9;

  static final Comparator<String> SMALL_FIRST =
      Comparator.comparingDouble(SizeOrder::measure).thenComparing(Comparator.naturalOrder());

  private SizeOrder() {}

  private static double measure(String size) {
    if (size.isEmpty()) {
      return -1;
    }
    Matcher figure = FIGURE.matcher(size);
    if (!figure.matches()) {
      int letter = LETTERS.indexOf(size.toUpperCase(Locale.ROOT));
      return letter < 0 ? 2 * WORDS : WORDS + letter;
    }
    double first = Double.parseDouble(figure.group(1).replace(',', '.'));
    if (figure.group(3) == null) {
      return first;
    }
    double below = Double.parseDouble(figure.group(3));
    if (below == 0) {
      return NOUGHT + first;
    }
    return figure.group(2) == null
        ? first / below
        : first + Double.parseDouble(figure.group(2)) / below;
  }
}
