package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
import sparewell.spares.IdleStyle;
import sparewell.spares.Outlook;
import sparewell.spares.SparesReport;
import sparewell.spares.SparesRow;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** Pieces to carry of every item, and pieces to bring aboard. */
public final class SparesSheet {
  /** Tab of the sheet. */
  public static final String NAME = "Spares";

  /** Headings by which the next run finds what this one said of each item. */
  public static final List<String> OF_ITEM =
      List.of("Style", "Size", "Colour", "Carry", "Run-out chance now");

  private SparesSheet() {}

  /** The sheet. */
  public static ReportSheet of(SparesReport report, BuyList buys) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(top(report, buys)));
    blocks.add(new Block.Rows(spares(report.rows())));
    blocks.add(new Block.Rows(brings(report.brings())));
    if (!report.idle().isEmpty()) {
      blocks.add(new Block.Rows(idle(report.idle())));
    }
    Charts.runOut(report.rows()).ifPresent(blocks::add);
    return new ReportSheet(
        NAME, "What to carry of every item, and what to bring aboard now", blocks);
  }

  private static List<Block.Line> top(SparesReport report, BuyList buys) {
    List<Block.Line> lines = new ArrayList<>();
    lines.add(action(report, buys));
    lines.add(Block.Line.of(report.horizon().words()));
    Outlook outlook = report.outlook();
    if (outlook.nowProbability().isPresent()) {
      lines.add(
          Block.Line.of(
              String.format(
                  Locale.ROOT,
                  "Chance that nothing important runs out: %s now, %s after bringing aboard what lies"
                      + " ashore, %s once you also bought the whole list.",
                  Phrase.chance(outlook.nowProbability()),
                  Phrase.chance(outlook.afterBringingProbability()),
                  Phrase.chance(outlook.afterBuyingProbability()))));
    }
    if (!outlook.holdingDown().isEmpty()) {
      lines.add(
          Block.Line.of(
              outlook.holdingDown().stream()
                  .map(SparesSheet::weak)
                  .collect(Collectors.joining("; ", "First to run out: ", "."))));
    }
    lines.add(
        Phrase.small(
            "Carry: the fewest pieces that last with the chance wanted, never under the floor, which"
                + " is the least you want aboard anyway. Important: "
                + Phrase.important(outlook)
                + "."));
    return lines;
  }

  private static String weak(Outlook.Weak weak) {
    return String.format(
        Locale.ROOT,
        "%s (%d aboard, chance %s)",
        weak.item().spoken(),
        weak.aboard(),
        Phrase.chance(weak.runOutProbability()));
  }

  private static Block.Line action(SparesReport report, BuyList buys) {
    int pieces = report.rows().stream().mapToInt(SparesRow::bringAboard).sum();
    long items = report.rows().stream().filter(row -> row.bringAboard() > 0).count();
    String bring =
        "bring "
            + Phrase.count(pieces, "piece")
            + " of "
            + Phrase.count(items, "item")
            + " aboard (second table)";
    List<BuyList.Line> needed = BuyWords.bought(buys, false);
    List<BuyList.Line> now = needed.isEmpty() ? BuyWords.bought(buys, true) : needed;
    String fills = needed.isEmpty() ? "" : BuyWords.fills(buys);
    String buy =
        now.isEmpty()
            ? "raise the budget: it pays for nothing of the Buy list"
            : "buy "
                + BuyWords.wares(now)
                + (needed.isEmpty() ? ", which only fills floors" : "")
                + " (Buy list"
                + (fills.isEmpty() ? "" : "; " + fills)
                + ")";
    if (pieces == 0 && buys.lines().isEmpty()) {
      return Phrase.strong(
          report.rows().isEmpty()
              ? "Nothing to plan: the Stock sheet has no usable row."
              : "Nothing to do: every item has what it should carry.",
          Tone.GOOD);
    }
    String text = pieces == 0 ? buy : buys.lines().isEmpty() ? bring : bring + ", then " + buy;
    return Phrase.strong("Do: " + text + ".", Tone.WATCH);
  }

  private static Table<Bring> brings(List<Bring> brings) {
    return new Table<>(
        "",
        "2. Bring these aboard, most useful first",
        ItemColumns.among(
            List.of(),
            Bring::item,
            Column.sheetOnly(
                "From", Format.TEXT, "Where the pieces lie ashore.", move -> move.from().name()),
            Column.sheetOnly(
                "Pieces", Format.COUNT, "Pieces to take from this place.", Bring::pieces),
            EntryTable.into(Bring::to, Bring::open),
            EntryTable.done()),
        brings,
        "Nothing ashore is wanted aboard.");
  }

  private static Table<SparesRow> spares(List<SparesRow> rows) {
    List<SparesRow> ordered = new ArrayList<>(rows);
    ordered.sort(
        Comparator.comparingDouble(
            row ->
                row.bringAboard() + row.buyPacks() == 0
                    ? 1
                    : -row.importance() * row.losses().expectedShortage(row.aboard())));
    return new Table<>(
        "spares.csv",
        "1. Every item, those that need something first",
        columns(),
        ordered,
        "No stock.");
  }

  private static List<Column<SparesRow>> columns() {
    return ItemColumns.among(
        List.of(),
        SparesRow::item,
        Column.<SparesRow>sheetOnly(
                "To do", Format.TEXT, "What to do about this item now.", SparesSheet::toDo)
            .toned(
                row ->
                    row.bringAboard() + row.buyPacks() == 0
                        ? Tone.GOOD
                        : row.aboard() == 0 && row.used() ? Tone.BAD : Tone.WATCH),
        Column.of("aboard", "Aboard", Format.COUNT, "Pieces aboard now.", SparesRow::aboard),
        Column.<SparesRow>of(
                "ashore", "Ashore", Format.COUNT, "Pieces in home storage now.", SparesRow::ashore)
            .quiet(),
        Column.csvOnly("planning_hours", Format.HOURS, SparesRow::planningHours),
        Column.<SparesRow>of(
                "expected_loss",
                "Expected loss",
                Format.NUMBER,
                "Pieces of the item lost over the planned hours, on average.",
                SparesRow::expectedLossPieces)
            .quiet(),
        Column.<SparesRow>of(
                "run_out_chance_now",
                "Run-out chance now",
                Format.PROBABILITY,
                "Chance that losses exceed the pieces aboard now.",
                SparesRow::runOutNowProbability)
            .quiet(),
        Column.of(
            "floor",
            "Floor",
            Format.COUNT,
            "Least pieces to carry: Carry at least, or the item's part of what is needed at once.",
            SparesRow::floor),
        Column.of(
            "carry",
            "Carry",
            Format.COUNT,
            "Pieces to carry: the least that lasts with the chance wanted, never under the floor.",
            SparesRow::carry),
        Column.<SparesRow>of(
                "run_out_chance_at_carry",
                "Run-out chance at carry",
                Format.PROBABILITY,
                "Chance that losses exceed the pieces to carry.",
                SparesRow::runOutAtCarryProbability)
            .quiet(),
        Column.of(
            "reason",
            "Reason",
            Format.TEXT,
            "What decides the count to carry.",
            row -> row.reason().words()),
        Column.<SparesRow>of(
                "bring_aboard",
                "Bring aboard",
                Format.COUNT,
                "Pieces to bring from home storage.",
                SparesRow::bringAboard)
            .quiet()
            .summed(),
        Column.csvOnly("buy_pieces", Format.COUNT, SparesRow::buyPieces),
        Column.<SparesRow>of(
                "buy_packs",
                "Buy packs",
                Format.COUNT,
                "Whole packs to buy for what is still short after bringing.",
                SparesRow::buyPacks)
            .quiet()
            .summed(),
        Column.<SparesRow>of(
                "cost",
                "Cost",
                Format.MONEY,
                "Money for those packs; empty where the price is not known.",
                SparesRow::cost)
            .quiet()
            .summed());
  }

  private static String toDo(SparesRow row) {
    List<String> parts = new ArrayList<>();
    if (row.bringAboard() > 0) {
      parts.add("bring " + row.bringAboard());
    }
    if (row.buyPacks() > 0) {
      parts.add("buy " + Phrase.packs(row.buyPacks(), row.buyPieces()));
    }
    return parts.isEmpty() ? "enough" : String.join(", ", parts);
  }

  private static Table<IdleStyle> idle(List<IdleStyle> idle) {
    return new Table<>(
        "",
        "3. Leave these ashore if you like: not thrown for long",
        List.of(
            Column.sheetOnly("Style", Format.TEXT, "Style.", IdleStyle::style),
            Column.sheetOnly("Pieces aboard", Format.COUNT, "Pieces aboard.", IdleStyle::pieces),
            Column.sheetOnly(
                "Last thrown",
                Format.DATE,
                "Last trip with hours or a loss of it; empty where there is none.",
                IdleStyle::lastThrown),
            Column.<IdleStyle>sheetOnly(
                    "Weight",
                    Format.MASS,
                    "Weight of the pieces aboard, as far as known.",
                    IdleStyle::knownWeight)
                .summed(),
            Column.<IdleStyle>sheetOnly(
                    "Pieces without weight",
                    Format.COUNT,
                    "Pieces aboard whose weight is not known, so the true weight is more.",
                    IdleStyle::unweighedPieces)
                .quiet()),
        idle,
        "No style aboard has gone unused for the set months, or the log is too short to tell.");
  }
}
