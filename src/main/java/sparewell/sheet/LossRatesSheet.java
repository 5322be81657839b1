package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.rates.AmongOthers;
import sparewell.rates.CoverEffect;
import sparewell.rates.LossModel;
import sparewell.rates.StyleRate;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** Loss rates by style, and the effect of cover on them. */
public final class LossRatesSheet {
  public static final String NAME = "Loss rates";

  /** Headings by which the next run finds the losses that this one knew of. */
  public static final List<String> OF_STYLE = List.of("Style", "Lost");

  private static final int MOST_LINES = 5;

  private LossRatesSheet() {}

  public static ReportSheet of(LossModel model) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(top(model));
    blocks.add(new Block.Rows(rates(model.styles(), model.otherLogs() > 0)));
    blocks.add(new Block.Rows(covers(model.covers())));
    Charts.lossRates(model.styles()).ifPresent(blocks::add);
    return new ReportSheet(NAME, "Loss rate of each style, and how certain it is", blocks);
  }

  private static Block top(LossModel model) {
    Lines lines = new Lines();
    model.styles().stream()
        .filter(rate -> rate.basis() != StyleRate.Basis.NONE)
        .max(Comparator.comparingDouble(rate -> rate.ratePer10Hours().orElse(0)))
        .ifPresent(
            rate ->
                lines.plain(
                    "Highest loss rate: %s, about %.1f pieces per 10 hours (90 %% interval %.1f to"
                        + " %.1f).",
                    rate.style(),
                    rate.ratePer10Hours().orElse(0),
                    rate.low90Per10Hours().orElse(0),
                    rate.high90Per10Hours().orElse(0)));
    if (model.otherLogs() > 0) {
      lines.plain(
          "The rates also use the experience of %s as a prior; your own log outweighs it as it"
              + " grows. 'Rests on' says how much of each rate comes from where.",
          Phrase.count(model.otherLogs(), "other log"));
      compared(model.styles()).forEach(lines::plain);
    }
    if (!model.converged()) {
      lines.strong(
          Tone.WATCH,
          "The fit of the rates did not converge: they are averaged over a wide range and less"
              + " certain than shown.");
    }
    lines.small(
        "%s; rates apply to your usual mix of cover. A style with few trips borrows from its family;"
            + " Own share is the part that comes from its own log. Low and High enclose the rate on"
            + " your next trip with 90 %% probability; that includes the change of rates from trip"
            + " to trip.",
        model.perHourAfloat()
            ? "Hours are hours afloat, since no trip has Style hours"
            : "Hours are hours thrown");
    return lines.block();
  }

  private static Table<StyleRate> rates(List<StyleRate> rows, boolean others) {
    List<Column<StyleRate>> columns =
        new ArrayList<>(
            List.of(
                Format.TEXT.column("style", "Style", "Style of lure or gear", StyleRate::style),
                Format.TEXT.column(
                    "family",
                    "Family",
                    "Group of styles whose rates are estimated together",
                    StyleRate::family),
                Format.TEXT.inFile("exposure", row -> row.basis().word()),
                Format.COUNT.column("trips", "Trips", "Trips it was used on", StyleRate::trips),
                Format.HOURS.column("hours", "Hours", "Hours it was used", StyleRate::usedHours),
                Format.COUNT.column(
                    "lost", "Lost", "Pieces lost in those hours", StyleRate::lostPieces),
                Format.NUMBER.column(
                    "raw_per_10h",
                    "Log alone",
                    "Pieces lost divided by hours, times 10: your log alone",
                    StyleRate::rawPer10Hours),
                Format.NUMBER.column(
                    "rate_per_10h",
                    "Best estimate",
                    "Estimated pieces lost per 10 hours, from the style's own log and its family",
                    StyleRate::ratePer10Hours),
                Format.NUMBER.column(
                    "low90_per_10h",
                    "Low",
                    "The rate on the next trip is above this with 95 % probability",
                    StyleRate::low90Per10Hours),
                Format.NUMBER.column(
                    "high90_per_10h",
                    "High",
                    "The rate on the next trip is below this with 95 % probability",
                    StyleRate::high90Per10Hours),
                Format.PROBABILITY.column(
                    "own_share",
                    "Own share",
                    "Share of the rate that comes from the style's own log; the rest comes from its family",
                    StyleRate::ownShare)));
    if (others) {
      columns.addAll(ofOthers());
    }
    columns.add(Format.TEXT.column("note", "Note", "Caveats", StyleRate::note));
    return new Table<>(
        "loss-rates.csv",
        "Loss rates: pieces lost per 10 hours",
        columns,
        rows,
        "No styles are listed.");
  }

  private static Table<CoverEffect> covers(List<CoverEffect> rows) {
    List<Column<CoverEffect>> columns =
        List.of(
            Format.TEXT.column("cover", "Cover", "Kind of cover fished", CoverEffect::cover),
            Format.COUNT.column("trips", "Trips", "Trips logged in it", CoverEffect::trips),
            Format.NUMBER.column(
                "multiplier",
                "Losses times",
                "Factor by which this cover multiplies losses, relative to your usual mix",
                CoverEffect::multiplier),
            Format.NUMBER.column(
                "low90",
                "Low",
                "The factor is above this with 95 % probability",
                CoverEffect::low90),
            Format.NUMBER.column(
                "high90",
                "High",
                "The factor is below this with 95 % probability",
                CoverEffect::high90));
    return new Table<>(
        "cover-effects.csv",
        "Effect of cover on losses",
        columns,
        rows,
        "No trip has a Cover: fill it in to see its effect on losses.");
  }

  /**
   * Styles of which the log shows that the angler loses more or less than others, clearest first.
   */
  private static List<String> compared(List<StyleRate> rates) {
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
  private static List<Column<StyleRate>> ofOthers() {
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
