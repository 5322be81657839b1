package sparewell.sheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.season.Place;
import sparewell.spares.Outlook;
import sparewell.stock.PieceMove;
import sparewell.table.Block;
import sparewell.table.Tone;

/** Numbers and lines as words of running text. */
final class Phrase {
  private Phrase() {}

  /** A pattern of {@link String#format} filled with its parts; without parts the text as it is. */
  static String text(String pattern, Object... parts) {
    return parts.length == 0 ? pattern : String.format(Locale.ROOT, pattern, parts);
  }

  /** A chance like {@code 63 %}; never rounded up to certainty or down to impossible. */
  static String chance(double probability) {
    if (probability > 0.995 && probability < 1) {
      return "over 99 %";
    }
    if (probability < 0.005 && probability > 0) {
      return "under 1 %";
    }
    return String.format(Locale.ROOT, "%.0f %%", probability * 100);
  }

  /** A change of a chance like {@code from 53 to 91 %}, with decimals where they tell it. */
  static String fromTo(double before, double after) {
    boolean fine = before >= 0.9 || chance(before).equals(chance(after));
    String from = fine ? fine(before) : chance(before).replace(" %", "");
    return "from " + from + " to " + (fine ? fine(after) + " %" : chance(after));
  }

  private static String fine(double probability) {
    return probability > 0.9995 && probability < 1
        ? "over 99.9"
        : String.format(Locale.ROOT, "%.1f", probability * 100).replace(".0", "");
  }

  static String chance(OptionalDouble probability) {
    return probability.isPresent() ? chance(probability.getAsDouble()) : "not known";
  }

  /** A share like {@code 95 %} or {@code 97.5 %}, as set. */
  static String exactChance(double probability) {
    return number(probability * 100) + " %";
  }

  /** A number with the decimals it has, two at most. */
  static String number(double value) {
    return BigDecimal.valueOf(value)
        .setScale(2, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  static String money(BigDecimal money, String currency) {
    return money.setScale(2, RoundingMode.HALF_EVEN).toPlainString() + " " + currency;
  }

  /** A count like {@code 1 box} or {@code 3 boxes}. */
  static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  /** A count with its noun, which takes an s for all counts but 1. */
  static String count(long count, String noun) {
    return count(count, noun, noun + "s");
  }

  /** A count like {@code 2 packs}; where a pack is one piece, {@code 2 pieces}. */
  static String packs(int packs, int pieces) {
    return packs == pieces ? count(pieces, "piece") : count(packs, "pack");
  }

  static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  /** A cell like {@code Boxes B4}; the sheet's name alone for a whole sheet. */
  static String place(Cell at) {
    return (at.sheet() + " " + at.reference()).strip();
  }

  static String place(Place place) {
    return place.equals(PieceMove.OF_CHOICE) ? EntryTable.OF_CHOICE : place.name();
  }

  /**
   * Number of items that count as important, like {@code 12 items in use with an importance of 1 or
   * more}.
   */
  static String important(Outlook outlook) {
    return count(outlook.watchedItems(), "item")
        + " in use"
        + (outlook.full() ? " with an importance of 1 or more" : " with an importance above 0");
  }

  static Block.Line strong(String text, Tone tone) {
    return new Block.Line(text, Block.Weight.STRONG, tone, Optional.empty());
  }
}
