package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
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

/** What is lost of each style, and what cover does to it. */
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
    return new ReportSheet(
        "Loss rates", "What you really lose of each style, and how sure that is", blocks);
  }

  private static List<Block.Line> top(LossModel model) {
    List<Block.Line> lines = new ArrayList<>();
    Optional<StyleRate> worst =
        model.styles().stream()
            .filter(rate -> rate.basis() != StyleRate.Basis.NONE)
            .max(java.util.Comparator.comparingDouble(rate -> rate.ratePer10Hours().orElse(0)));
    worst.ifPresent(
        rate ->
            lines.add(
                Block.Line.of(
                    String.format(
                        java.util.Locale.ROOT,
                        "Most is lost of %s: about %.1f pieces in 10 hours, most likely %.1f to"
                            + " %.1f.",
                        rate.style(),
                        rate.ratePer10Hours().orElse(0),
                        rate.low90Per10Hours().orElse(0),
                        rate.high90Per10Hours().orElse(0)))));
    if (model.otherLogs() > 0) {
      lines.add(
          Block.Line.of(
              "The rates lean on the experience of "
                  + model.otherLogs()
                  + (model.otherLogs() == 1 ? " other log" : " other logs")
                  + ", as what is believed before your own log, which outweighs it as it grows;"
                  + " 'Rests on' says how much."));
      lines.addAll(OthersLines.of(model.styles()));
    }
    if (!model.converged()) {
      lines.add(
          Phrase.strong(
              "The rates did not settle on one best fit: they are averaged over a wide range and"
                  + " less certain than shown.",
              Tone.WATCH));
    }
    lines.add(
        Phrase.small(
            (model.perHourAfloat()
                    ? "Hours are hours afloat, since no trip has Style hours; "
                    : "Hours are hours thrown; ")
                + "rates are at your usual mix of cover. A style with few trips leans on its"
                + " family; own share is the part that rests on its own log. The rate on your next"
                + " trip lies between Low and High nine times in ten: rates wander from trip to"
                + " trip, and that is counted in."));
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
                    "Pieces lost divided by hours, times 10: what the log alone says",
                    StyleRate::rawPer10Hours),
                Column.of(
                    "rate_per_10h",
                    "Best estimate",
                    Format.NUMBER,
                    "Best estimate of pieces lost in 10 hours, own log and family together",
                    StyleRate::ratePer10Hours),
                Column.of(
                    "low90_per_10h",
                    "Low",
                    Format.NUMBER,
                    "The rate on the next trip is higher than this with 95 % chance",
                    StyleRate::low90Per10Hours),
                Column.of(
                    "high90_per_10h",
                    "High",
                    Format.NUMBER,
                    "The rate on the next trip is lower than this with 95 % chance",
                    StyleRate::high90Per10Hours),
                Column.of(
                    "own_share",
                    "Own share",
                    Format.PROBABILITY,
                    "How much of the rate comes from the style's own log; the rest is its family's",
                    StyleRate::ownShare)));
    if (others) {
      columns.addAll(OthersLines.columns());
    }
    columns.add(Column.of("note", "Note", Format.TEXT, "What to bear in mind", StyleRate::note));
    return new Table<>(
        "loss-rates.csv",
        "Loss rate of each style: pieces lost in 10 hours",
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
                "What this cover multiplies losses with, against your usual mix of cover",
                CoverEffect::multiplier),
            Column.of(
                "low90",
                "Low",
                Format.NUMBER,
                "The true figure is higher than this with 95 % chance",
                CoverEffect::low90),
            Column.of(
                "high90",
                "High",
                Format.NUMBER,
                "The true figure is lower than this with 95 % chance",
                CoverEffect::high90));
    return new Table<>(
        "cover-effects.csv",
        "What cover does to losses",
        columns,
        rows,
        "No trip has a Cover: fill it in to see what it does to losses.");
  }
}
