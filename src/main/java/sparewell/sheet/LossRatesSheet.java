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
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** Loss rates by style, and the effect of cover on them. */
public final class LossRatesSheet {
  public static final String NAME = "Loss rates";
  private static final Columns<StyleRate> RATES = Columns.of("Loss rates");
  private static final Columns<CoverEffect> COVERS = Columns.of("Effect of cover");

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
    return new ReportSheet(NAME, answer(model), blocks);
  }

  private static String answer(LossModel model) {
    return model.styles().stream()
        .filter(rate -> rate.basis() != StyleRate.Basis.NONE)
        .max(Comparator.comparingDouble(rate -> rate.ratePer10Hours().orElse(0)))
        .map(
            rate ->
                Phrase.text(
                    "Highest loss rate: %s, about %.1f pieces per 10 hours (90 %% interval %.1f to"
                        + " %.1f)",
                    rate.style(),
                    rate.ratePer10Hours().orElse(0),
                    rate.low90Per10Hours().orElse(0),
                    rate.high90Per10Hours().orElse(0)))
        .orElse("No loss rates yet: no trip is logged");
  }

  private static Block top(LossModel model) {
    Lines lines = new Lines();
    if (model.otherLogs() > 0) {
      lines.plain(
          "The rates also use the experience of %s as a prior; your own log outweighs it as it"
              + " grows. 'Rests on' says how much of each rate comes from where.",
          Phrase.count(model.otherLogs(), "other log"));
      compared(model.styles()).forEach(lines::plain);
    }
    if (!model.converged()) {
      lines.note("Not settled");
    }
    lines.note(
        "Loss rates",
        model.perHourAfloat() ? "hours afloat, since no trip has Style hours" : "hours thrown");
    return lines.block();
  }

  private static Table<StyleRate> rates(List<StyleRate> rows, boolean others) {
    return RATES.table(
        rows,
        List.of(
            RATES.column("style", StyleRate::style),
            RATES.column("family", StyleRate::family),
            Format.TEXT.inFile("exposure", row -> row.basis().word()),
            RATES.column("trips", StyleRate::trips),
            RATES.column("hours", StyleRate::usedHours),
            RATES.column("lost", StyleRate::lostPieces),
            RATES.column("raw_per_10h", StyleRate::rawPer10Hours),
            RATES.column("rate_per_10h", StyleRate::ratePer10Hours),
            RATES.column("low90_per_10h", StyleRate::low90Per10Hours),
            RATES.column("high90_per_10h", StyleRate::high90Per10Hours),
            RATES.column("own_share", StyleRate::ownShare),
            RATES.column("Rests on", LossRatesSheet::restsOn, others),
            RATES.column(
                "Times others", rate -> clear(rate).map(AmongOthers.Times::middle), others),
            RATES.column("note", StyleRate::note)));
  }

  private static Table<CoverEffect> covers(List<CoverEffect> rows) {
    return COVERS.table(
        rows,
        List.of(
            COVERS.column("cover", CoverEffect::cover),
            COVERS.column("trips", CoverEffect::trips),
            COVERS.column("multiplier", CoverEffect::multiplier),
            COVERS.column("low90", CoverEffect::low90),
            COVERS.column("high90", CoverEffect::high90)));
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

  private static Optional<String> restsOn(StyleRate rate) {
    return rate.amongOthers()
        .map(
            among ->
                Phrase.text(
                    "own log %.0f %%, others %.0f %%, family %.0f %%",
                    100 * rate.ownShare().orElse(0),
                    100 * among.othersShare(),
                    100 * among.familyShare()));
  }
}
