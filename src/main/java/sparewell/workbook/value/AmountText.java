package sparewell.workbook.value;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A typed amount: one or more numbers, each followed by a word, such as {@code 3/8 oz} or {@code 5
 * ft 3 in}.
 *
 * @param terms the numbers with their words, at least one
 * @param comma whether a comma was read as a decimal point or passed over between thousands; it
 *     stands between thousands where three digits follow it and what stands before is no bare 0
 */
record AmountText(List<Term> terms, boolean comma) {
  /** A number and the word after it; empty where there is none. */
  record Term(double amount, String word) {}

  private static final String FRACTION = "(?:(\\d+)[ -]+)?(\\d+) ?/ ?(\\d+)";
  private static final String THOUSANDS = "[1-9]\\d{0,2}(?:,\\d{3})+(?:\\.\\d+)?";
  private static final String CONTINENTAL = "(?:\\d{1,3}(?:\\.\\d{3})+|\\d+),\\d+";
  private static final String DECIMAL = "(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?";
  private static final Pattern TERM =
      Pattern.compile(
          "\\G ?([+-]?) ?(?:"
              + FRACTION
              + "|("
              + THOUSANDS
              + "|"
              + CONTINENTAL
              + ")(?![\\d,.])|("
              + DECIMAL
              + ")(?![\\d,/])) ?-?((?:\\p{L}[\\p{L}.]*|'|\"|%)?)");

  static Optional<AmountText> of(String text) {
    String plain = plain(text);
    Matcher matcher = TERM.matcher(plain);
    List<Term> terms = new ArrayList<>();
    boolean comma = false;
    int end = 0;
    while (end < plain.length() && matcher.find() && matcher.end() > end) {
      Optional<Double> amount = amount(matcher);
      if (amount.isEmpty()) {
        return Optional.empty();
      }
      comma |= matcher.group(5) != null;
      double sign = matcher.group(1).equals("-") ? -1 : 1;
      terms.add(new Term(sign * amount.get(), matcher.group(7)));
      end = matcher.end();
    }
    boolean parted = terms.size() > 1 && terms.stream().anyMatch(term -> term.word().isEmpty());
    return end == plain.length() && !terms.isEmpty() && !parted
        ? Optional.of(new AmountText(terms, comma))
        : Optional.empty();
  }

  private static Optional<Double> amount(Matcher term) {
    if (term.group(4) != null) {
      double bottom = Double.parseDouble(term.group(4));
      double whole = term.group(2) == null ? 0 : Double.parseDouble(term.group(2));
      return bottom == 0
          ? Optional.empty()
          : Optional.of(whole + Double.parseDouble(term.group(3)) / bottom);
    }
    if (term.group(5) != null) {
      String text = term.group(5);
      boolean thousands = text.matches(THOUSANDS);
      return Optional.of(
          Double.parseDouble(
              thousands ? text.replace(",", "") : text.replace(".", "").replace(',', '.')));
    }
    double number = Double.parseDouble(term.group(6));
    return Double.isInfinite(number) ? Optional.empty() : Optional.of(number);
  }

  /** Fraction glyphs, typographic strokes, minus and quotation signs as their plain forms. */
  private static String plain(String text) {
    String spread = text.replaceAll("[\u00bc-\u00be\u2150-\u215e]", " $0");
    String plain =
        Normalizer.normalize(spread, Normalizer.Form.NFKC)
            .replace('\u2044', '/')
            .replace('\u2215', '/')
            .replaceAll("[\u2212\u2013]", "-")
            .replaceAll("[\u2019\u2032]", "'")
            .replaceAll("[\u201c\u201d\u2033]|''", "\"");
    return Names.clean(plain);
  }
}
