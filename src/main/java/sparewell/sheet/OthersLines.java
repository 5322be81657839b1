package sparewell.sheet;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.rates.AmongOthers;
import sparewell.rates.StyleRate;
import sparewell.table.Column;
import sparewell.table.Format;

/** The part of Loss rates about the experience of others. */
final class OthersLines {
  private static final int MOST_LINES = 5;

  private OthersLines() {}

  /**
   * Styles of which the log shows that the angler loses more or less than others, clearest first.
   */
  static List<String> compared(List<StyleRate> rates) {
    return rates.stream()
        .filter(rate -> clear(rate).isPresent())
        .sorted(
            Comparator.comparingDouble(
                    (StyleRate rate) -> -Math.abs(Math.log(clear(rate).orElseThrow().middle())))
                .thenComparing(StyleRate::style))
        .limit(MOST_LINES)
        .map(rate -> compared(rate.style(), clear(rate).orElseThrow()))
        .toList();
  }

  private static String compared(String style, AmongOthers.Times times) {
    return Phrase.text(
        "You lose %.1f times what others lose of %s (%.1f to %.1f).",
        times.middle(), style, times.low90(), times.high90());
  }

  private static Optional<AmongOthers.Times> clear(StyleRate rate) {
    return rate.amongOthers().flatMap(AmongOthers::times).filter(AmongOthers.Times::clear);
  }

  /** Columns of the sheet alone: those of the file are fixed. */
  static List<Column<StyleRate>> columns() {
    return List.of(
        Format.TEXT.onSheet(
            "Rests on",
            "How much of the rate comes from your own log, from others' logs of the style, and from"
                + " their logs of its family",
            rate -> rate.amongOthers().map(among -> restsOn(rate, among)).orElse("")),
        Format.NUMBER.onSheet(
            "Times others",
            "How many times what others lose of it you lose; blank where your log does not say that"
                + " you differ",
            rate -> clear(rate).map(AmongOthers.Times::middle)));
  }

  private static String restsOn(StyleRate rate, AmongOthers among) {
    return Phrase.text(
        "own log %.0f %%, others %.0f %%, family %.0f %%",
        100 * rate.ownShare().orElse(0), 100 * among.othersShare(), 100 * among.familyShare());
  }
}
