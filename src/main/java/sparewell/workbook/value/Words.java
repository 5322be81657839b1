package sparewell.workbook.value;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import sparewell.finding.Code;
import sparewell.workbook.grid.NumberShape;
import sparewell.workbook.grid.RawCell;

/** Reads texts, yes and no, and words of a list. */
public final class Words {
  private static final String FORMULA_STARTS = "=+-@\t\r";
  private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?(?:\\d+[.,]?\\d*|[.,]\\d+)");

  private Words() {}

  /** Text of a cell; numbers in plain decimals, dates as yyyy-mm-dd. */
  public static String text(RawCell cell) {
    return switch (cell.kind()) {
      case TEXT -> Names.clean(cell.text());
      case NUMBER ->
          (cell.shape() == NumberShape.FRACTION
                  ? Numbers.fraction(cell.number())
                  : Optional.<String>empty())
              .orElseGet(() -> Numbers.plain(cell.number()));
      case DATE -> cell.text().isEmpty() ? Numbers.plain(cell.number()) : cell.text();
      case BOOLEAN, ERROR, DAMAGED -> cell.text();
      case UNCOMPUTED -> "";
    };
  }

  /** Text of a size; a date is read as the fraction that was typed. */
  public static String size(RawCell cell) {
    return cell.kind() == RawCell.Kind.DATE
        ? Dates.typedFraction(cell).map(Dates.TypedFraction::text).orElseGet(() -> text(cell))
        : text(cell);
  }

  /** Text of a size, with a remark where it was stored as a date. */
  public static String size(RawCell cell, Remarks remarks) {
    String size = size(cell);
    if (cell.kind() == RawCell.Kind.DATE) {
      remarks.assumed(Code.DATE_AS_FRACTION, size);
    }
    return size;
  }

  /** The text as CSV holds it: with an apostrophe where a spreadsheet would see a formula. */
  public static String neutral(String text) {
    boolean risky = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
    return risky && !PLAIN_NUMBER.matcher(text).matches() ? "'" + text : text;
  }

  /** The text without such an apostrophe. */
  public static String plain(String text) {
    boolean neutral = text.length() > 1 && FORMULA_STARTS.indexOf(text.charAt(1)) >= 0;
    return neutral && text.charAt(0) == '\'' ? text.substring(1) : text;
  }

  public static Optional<Boolean> yesNo(RawCell cell, Remarks remarks) {
    String word = cell.kind() == RawCell.Kind.DATE ? "" : Names.fold(text(cell));
    boolean yes = List.of("yes", "y", "true", "x", "1").contains(word);
    if (!yes && !List.of("no", "n", "false", "0").contains(word)) {
      remarks.unusable(Code.NOT_YES_NO, "");
      return Optional.empty();
    }
    return Optional.of(yes);
  }

  /** Reads one of the words, in plural or singular. */
  public static Optional<String> choice(RawCell cell, List<String> words, Remarks remarks) {
    Optional<String> chosen = among(cell, words);
    if (chosen.isEmpty()) {
      String near =
          NearMiss.of(Names.fold(text(cell)), words)
              .map(word -> "; did you mean '" + word + "'?")
              .orElse("");
      remarks.unusable(Code.NOT_A_CHOICE, String.join(", ", words) + near);
    }
    return chosen;
  }

  /** The word that a cell holds, in plural or singular; absent where it holds none. */
  public static Optional<String> among(RawCell cell, List<String> words) {
    String typed = Names.fold(text(cell));
    return words.stream()
        .filter(w -> typed.equals(w) || typed.equals(w + "s") || (typed + "s").equals(w))
        .findFirst();
  }
}
