package sparewell.workbook.value;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Code;
import sparewell.workbook.grid.NumberShape;
import sparewell.workbook.grid.RawCell;

/** Reads texts, yes and no, and words of a fixed list. */
public final class Words {
  private Words() {}

  /** The text of a cell; numbers and dates as a spreadsheet shows them plainly. */
  public static String text(RawCell cell) {
    return switch (cell.kind()) {
      case TEXT -> Names.clean(cell.text());
      case NUMBER ->
          Optional.of(cell)
              .filter(c -> c.shape() == NumberShape.FRACTION)
              .flatMap(c -> Numbers.fraction(c.number()))
              .orElseGet(() -> Numbers.plain(cell.number()));
      case DATE -> cell.text().isEmpty() ? Numbers.plain(cell.number()) : cell.text();
      case BOOLEAN, ERROR, DAMAGED -> cell.text();
      case UNCOMPUTED -> "";
    };
  }

  /** The text of a size; a date is the fraction that was typed. */
  public static String size(RawCell cell) {
    return Optional.of(cell)
        .filter(c -> c.kind() == RawCell.Kind.DATE)
        .flatMap(Dates::typedFraction)
        .map(Dates.TypedFraction::text)
        .orElseGet(() -> text(cell));
  }

  /** The text of a size, with a remark where it became a date. */
  public static String size(RawCell cell, Remarks remarks) {
    String size = size(cell);
    if (cell.kind() == RawCell.Kind.DATE) {
      remarks.assumed(Code.DATE_AS_FRACTION, size);
    }
    return size;
  }

  /** Yes or no. */
  public static Optional<Boolean> yesNo(RawCell cell, Remarks remarks) {
    String word = cell.kind() == RawCell.Kind.DATE ? "" : Names.fold(text(cell));
    switch (word) {
      case "yes", "y", "true", "x", "1" -> {
        return Optional.of(true);
      }
      case "no", "n", "false", "0" -> {
        return Optional.of(false);
      }
      default -> {
        remarks.unusable(Code.NOT_YES_NO, "");
        return Optional.empty();
      }
    }
  }

  /** One of the words; its plural or singular is understood. */
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

  /** The one of the words that a cell holds, in plural or singular; absent where it holds none. */
  public static Optional<String> among(RawCell cell, List<String> words) {
    String typed = Names.fold(text(cell));
    return words.stream()
        .filter(w -> typed.equals(w) || typed.equals(w + "s") || (typed + "s").equals(w))
        .findFirst();
  }
}
