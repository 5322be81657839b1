package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
  /** Tab of the sheet. */
  public static final String NAME = "Loss rates";

  /** Headings by which the next run finds the losses that this one knew of. */
  public static final List<String> OF_STYLE = List.of("Style", "Lost");

  private LossRatesSheet() {}

  /** The sheet. */
  public static ReportSheet of(LossModel model) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(top(model)));
    blocks.add(new Block.Rows(rates(model.styles(), model.otherLogs() > 0)));
    blocks.add(new Block.Rows(covers(model.covers())));
    Charts.lossRates(model.styles()).ifPresent(blocks::add);
    return new ReportSheet(NAME, "Loss rate of each style, and how certain it is", blocks);
  }

  private static List<Block.Line> top(LossModel model) {
    List<Block.Line> lines = new ArrayList<>();
    Optional<StyleRate> worst =
        model.styles().stream()
            .filter(rate -> rate.basis() != StyleRate.Basis.NONE)
            .max(Comparator.comparingDouble(rate -> rate.ratePer10Hours().orElse(0)));
    worst.ifPresent(
        rate ->
            lines.add(
                Block.Line.of(
                    String.format(
                        Locale.ROOT,
                        "Highest loss rate: %s, about %.1f pieces per 10 hours (90 %% interval %.1f to"
                            + " %.1f).",
                        rate.style(),
                        rate.ratePer10Hours().orElse(0),
                        rate.low90Per10Hours().orElse(0),
                        rate.high90Per10Hours().orElse(0)))));
    if (model.otherLogs() > 0) {
      lines.add(
          Block.Line.of(
              "The rates also use the experience of "
                  + model.otherLogs()
                  + (model.otherLogs() == 1 ? " other log" : " other logs")
                  + " as a prior; your own log outweighs it as it grows. 'Rests on' says how much of each"
                  + " rate comes from where."));
      lines.addAll(OthersLines.of(model.styles()));
    }
    if (!model.converged()) {
      lines.add(
          Phrase.strong(
              "The fit of the rates did not converge: they are averaged over a wide range and less"
                  + " certain than shown.",
              Tone.WATCH));
    }
    lines.add(
        Phrase.small(
            (model.perHourAfloat()
                    ? "Hours are hours afloat, since no trip has Style hours; "
                    : "Hours are hours thrown; ")
                + "rates apply to your usual mix of cover. A style with few trips borrows from its"
                + " family; Own share is the part that comes from its own log. Low and High enclose"
                + " the rate on your next trip with 90 % probability; that includes the change of"
                + " rates from trip to trip."));
    return lines;
  }

  private static Table<StyleRate> rates(List<StyleRate> rows, boolean others) {
    List<Column<StyleRate>> columns =
        new ArrayList<>(
            List.of(
                Column.of("style", "Style", Format.TEXT, "Style of lure or gear", StyleRate::style),
                Column.of("family", "Family", Format.TEXT, "Styles it leans on", StyleRate::family),
                Column.csvOnly("exposure", Format.TEXT, row -> row.basis().word()),
                Column.of("trips", "Trips", Format.COUNT, "Trips it was used on", StyleRate::trips),
                Column.of(
                    "hours", "Hours", Format.HOURS, "Hours it was used", StyleRate::usedHours),
                Column.of(
                    "lost",
                    "Lost",
                    Format.COUNT,
                    "Pieces lost in those hours",
                    StyleRate::lostPieces),
                Column.of(
                    "raw_per_10h",
                    "Log alone",
                    Format.NUMBER,
                    "Pieces lost divided by hours, times 10: your log alone",
                    StyleRate::rawPer10Hours),
                Column.of(
                    "rate_per_10h",
                    "Best estimate",
                    Format.NUMBER,
                    "Estimated pieces lost per 10 hours, from the style's own log and its family",
                    StyleRate::ratePer10Hours),
                Column.of(
                    "low90_per_10h",
                    "Low",
                    Format.NUMBER,
                    "The rate on the next trip is above this with 95 % probability",
                    StyleRate::low90Per10Hours),
                Column.of(
                    "high90_per_10h",
                    "High",
                    Format.NUMBER,
                    "The rate on the next trip is below this with 95 % probability",
                    StyleRate::high90Per10Hours),
                Column.of(
                    "own_share",
                    "Own share",
                    Format.PROBABILITY,
                    "Share of the rate that comes from the style's own log; the rest comes from its family",
                    StyleRate::ownShare)));
    if (others) {
      columns.addAll(OthersLines.columns());
    }
    columns.add(Column.of("note", "Note", Format.TEXT, "What to bear in mind", StyleRate::note));
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
            Column.of("cover", "Cover", Format.TEXT, "Kind of cover fished", CoverEffect::cover),
            Column.of("trips", "Trips", Format.COUNT, "Trips logged in it", CoverEffect::trips),
            Column.of(
                "multiplier",
                "Losses times",
                Format.NUMBER,
                "Factor by which this cover multiplies losses, relative to your usual mix",
                CoverEffect::multiplier),
            Column.of(
                "low90",
                "Low",
                Format.NUMBER,
                "The factor is above this with 95 % probability",
                CoverEffect::low90),
            Column.of(
                "high90",
                "High",
                Format.NUMBER,
                "The factor is below this with 95 % probability",
                CoverEffect::high90));
    return new Table<>(
        "cover-effects.csv",
        "Effect of cover on losses",
        columns,
        rows,
        "No trip has a Cover: fill it in to see its effect on losses.");
  }
}
