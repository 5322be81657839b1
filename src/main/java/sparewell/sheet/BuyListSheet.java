package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import sparewell.spares.BuyList;
import sparewell.spares.BuyList.Point;
import sparewell.spares.OffSeason;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The buy list, in the order to buy. */
public final class BuyListSheet {
  /** Tab of the sheet. */
  public static final String NAME = "Buy list";

  private BuyListSheet() {}

  /** The sheet. */
  public static ReportSheet of(BuyList list, Optional<OffSeason> offSeason) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(top(list)));
    blocks.add(new Block.Rows(lines(list, false)));
    blocks.add(new Block.Rows(lines(list, true)));
    Table<Point> curve = curve(list);
    if (!curve.rows().isEmpty()) {
      Charts.money(curve).ifPresent(blocks::add);
      blocks.add(new Block.Rows(curve));
    }
    offSeason.ifPresent(view -> blocks.addAll(OffSeasonBlocks.of(view, list.currency())));
    return new ReportSheet(NAME, "What to buy first with the money available", blocks);
  }

  private static List<Block.Line> top(BuyList list) {
    List<Block.Line> lines = new ArrayList<>();
    lines.add(action(list));
    budget(list).ifPresent(lines::add);
    list.more().ifPresent(more -> lines.add(Block.Line.of(more(more, list))));
    long unpriced = list.lines().stream().filter(line -> line.cost().isEmpty()).count();
    if (unpriced > 0) {
      lines.add(
          Phrase.strong(
              Phrase.count(unpriced, "line")
                  + " without a price: fill in Pack price to have "
                  + (unpriced == 1 ? "it" : "them")
                  + " weighed against money.",
              Tone.WATCH));
    }
    if (list.gapPieces() > 0) {
      lines.add(
          Phrase.small(
              String.format(
                  Locale.ROOT,
                  "No other choice for the same money lowers that by more than %.4f pieces.",
                  list.gapPieces())));
    }
    return lines;
  }

  private static Block.Line action(BuyList list) {
    if (list.lines().isEmpty()) {
      return Phrase.strong("Nothing to buy: no item of the Stock sheet falls short.", Tone.GOOD);
    }
    List<BuyList.Line> needed = BuyWords.bought(list, false);
    String fills = BuyWords.fills(list);
    if (!needed.isEmpty()) {
      return Phrase.strong(
          Phrase.capital(BuyWords.wares(needed))
              + BuyWords.price(needed, list)
              + (BuyWords.cost(needed).isEmpty() ? ", " : " ")
              + BuyWords.effect(list)
              + (fills.isEmpty() ? "." : "; " + fills + "."),
          Tone.WATCH);
    }
    if (!list.part(false).isEmpty()) {
      return Phrase.strong("Your budget pays for nothing of what is needed.", Tone.WATCH);
    }
    return Phrase.strong(
        "Nothing is needed for the expected losses" + (fills.isEmpty() ? "." : "; " + fills + "."),
        Tone.GOOD);
  }

  private static Optional<Block.Line> budget(BuyList list) {
    if (list.wanted().signum() == 0) {
      return Optional.empty();
    }
    String wanted = Phrase.money(list.wanted(), list.currency());
    String text =
        list.budget()
            .map(
                money ->
                    "That is "
                        + Phrase.money(list.spent(), list.currency())
                        + " of your "
                        + Phrase.money(money, list.currency())
                        + (list.spent().compareTo(list.wanted()) == 0
                            ? "."
                            : "; everything priced would cost " + wanted + "."))
            .orElse(
                "Everything priced costs "
                    + wanted
                    + ". No Budget is set in Settings, so no line is cut off.");
    return Optional.of(Block.Line.of(text));
  }

  private static String more(BuyList.More more, BuyList list) {
    return String.format(
        Locale.ROOT,
        more.first() ? "What the first %s buys: %s. %s, %s." : "What %s more buys: %s. %s, %s.",
        Phrase.money(more.money(), list.currency()),
        more.packs().stream().map(BuyListSheet::change).collect(Collectors.joining(", ")),
        shortage(more.before().shortagePieces(), more.outcome().shortagePieces()),
        chance(
            more.before().nothingRunsOutProbability(), more.outcome().nothingRunsOutProbability()));
  }

  /** A change that the shown digits would hide is said to be as small as it is. */
  private static String shortage(double before, double after) {
    String was = String.format(Locale.ROOT, "%.2f", before);
    String now = String.format(Locale.ROOT, "%.2f", after);
    return was.equals(now)
        ? "That changes little: you are short of under 0.01 pieces less on average"
        : "Short of " + now + " instead of " + was + " pieces on average";
  }

  private static String chance(OptionalDouble before, OptionalDouble after) {
    String was = Phrase.chance(before);
    String now = Phrase.chance(after);
    if (!was.equals(now)) {
      return "chance " + now + " instead of " + was;
    }
    return before.isEmpty()
        ? "chance " + now
        : "and the chance of " + now + " changes by less than a point";
  }

  private static String change(BuyList.More.Change change) {
    return (change.packs() > 0 ? "" : "without ")
        + Phrase.packs(Math.abs(change.packs()), Math.abs(change.pieces()))
        + " of "
        + change.item().spoken();
  }

  private static Table<BuyList.Line> lines(BuyList list, boolean fills) {
    return new Table<>(
        "buy-list.csv",
        fills
            ? "2. These only fill floors, the least you want aboard (" + list.currency() + ")"
            : "1. Buy these first, in this order: they lower the expected shortage ("
                + list.currency()
                + ")",
        columns(list.budget().isPresent()),
        list.part(fills),
        fills ? "No floor is unfilled." : "Nothing more is needed for the expected losses.");
  }

  private static List<Column<BuyList.Line>> columns(boolean limited) {
    return ItemColumns.among(
        List.of(
            Column.of(
                "rank",
                "Rank",
                Format.COUNT,
                "Order to buy in: the largest fall of what you expect to miss for the money first;"
                    + " what the budget does not pay for, then what has no price, last.",
                BuyList.Line::rank)),
        BuyList.Line::item,
        Column.<BuyList.Line>of(
                "packs", "Packs", Format.COUNT, "Whole packs to buy.", BuyList.Line::packs)
            .summed(),
        Column.<BuyList.Line>of(
                "pieces", "Pieces", Format.COUNT, "Pieces in them.", BuyList.Line::pieces)
            .summed(),
        Column.<BuyList.Line>of(
                "cost",
                "Cost",
                Format.MONEY,
                "Money for these packs; empty where the price is not known.",
                BuyList.Line::cost)
            .summed(),
        Column.of(
            "cumulative_cost",
            "Cost so far",
            Format.MONEY,
            "Money for all lines down to this one.",
            BuyList.Line::cumulativeCost),
        Column.<BuyList.Line>of(
                "shortage_before",
                "Short before",
                Format.NUMBER,
                "Pieces of this item expected to be missed over the planned hours without this line.",
                BuyList.Line::shortageBeforePieces)
            .quiet(),
        Column.<BuyList.Line>of(
                "shortage_after",
                "Short after",
                Format.NUMBER,
                "Pieces of this item expected to be missed with this line bought.",
                BuyList.Line::shortageAfterPieces)
            .quiet(),
        limited
            ? Column.<BuyList.Line>of(
                    "within_budget",
                    "Within budget",
                    Format.YES_NO,
                    "Whether the budget pays for it; empty where the price is not known.",
                    BuyList.Line::withinBudget)
                .toned(line -> line.bought() ? Tone.GOOD : Tone.WATCH)
            : Column.csvOnly("within_budget", Format.YES_NO, BuyList.Line::withinBudget),
        EntryTable.into(BuyList.Line::into, BuyList.Line::open),
        EntryTable.done());
  }

  private static Table<Point> curve(BuyList list) {
    return new Table<>(
        "",
        "What each amount of money does (" + list.currency() + ")",
        List.of(
            Column.sheetOnly(
                "Money", Format.MONEY, "Money spent from the top of the list down.", Point::money),
            Column.sheetOnly(
                "Short on average",
                Format.NUMBER,
                "Pieces missed over the planned hours on average; important ones count more.",
                Point::shortagePieces),
            Column.sheetOnly(
                "Chance nothing runs out",
                Format.PROBABILITY,
                "Chance that no important item runs out over the planned hours.",
                Point::nothingRunsOutProbability)),
        list.curve().size() < 2 ? List.of() : list.curve(),
        list.lines().isEmpty() ? "Nothing to buy." : "Nothing listed has a price.");
  }
}
