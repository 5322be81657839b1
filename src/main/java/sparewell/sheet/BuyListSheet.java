package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import sparewell.spares.BuyList;
import sparewell.spares.OffSeason;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** What to buy, in the order to buy it. */
public final class BuyListSheet {
  private BuyListSheet() {}

  /** The sheet. */
  public static ReportSheet of(BuyList list, Optional<OffSeason> offSeason) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(top(list)));
    blocks.add(new Block.Rows(lines(list)));
    Table<BuyList.Point> curve = curve(list);
    Charts.money(curve).ifPresent(blocks::add);
    blocks.add(new Block.Rows(curve));
    offSeason.ifPresent(view -> blocks.addAll(OffSeasonBlocks.of(view, list.currency())));
    return new ReportSheet("Buy list", "What to buy first with the money at hand", blocks);
  }

  private static List<Block.Line> top(BuyList list) {
    List<Block.Line> lines = new ArrayList<>();
    long unpriced = list.lines().stream().filter(line -> line.cost().isEmpty()).count();
    lines.add(action(list, unpriced));
    if (list.lines().size() > unpriced) {
      lines.add(
          Block.Line.of(
              String.format(
                  Locale.ROOT,
                  (unpriced > 0 ? "With those that have a price" : "Then")
                      + " the chance that nothing important runs out is %s, and you are short of"
                      + " %.2f pieces on average (pieces of more importance count more).",
                  Phrase.chance(list.within().nothingRunsOutProbability()),
                  list.within().shortagePieces())));
    }
    list.more().ifPresent(more -> lines.add(Block.Line.of(more(more, list))));
    if (unpriced > 0 && unpriced < list.lines().size()) {
      lines.add(
          Phrase.strong(
              Phrase.count((int) unpriced, "line")
                  + " without a price at the end: fill in Pack price to have them ranked.",
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

  private static Block.Line action(BuyList list, long unpriced) {
    if (list.lines().isEmpty()) {
      return Phrase.strong("Nothing to buy: no item of the Stock sheet falls short.", Tone.GOOD);
    }
    String wanted = Phrase.money(list.wanted(), list.currency());
    if (list.lines().size() == unpriced) {
      return Phrase.strong(
          "Everything listed lacks a price; buy it in this order, and fill in Pack price to have it"
              + " weighed against money.",
          Tone.WATCH);
    }
    if (list.budget().isEmpty()) {
      return Phrase.strong(
          "Buy from the top down; everything priced costs "
              + wanted
              + ". No Budget is set, so no line is cut off.",
          Tone.WATCH);
    }
    String budget = Phrase.money(list.budget().get(), list.currency());
    return list.spent().compareTo(list.wanted()) == 0
        ? Phrase.strong("Buy everything priced: " + wanted + " of your " + budget + ".", Tone.GOOD)
        : Phrase.strong(
            "Buy the lines within the budget: "
                + Phrase.money(list.spent(), list.currency())
                + " of your "
                + budget
                + ". Everything priced would cost "
                + wanted
                + ".",
            Tone.WATCH);
  }

  private static String more(BuyList.More more, BuyList list) {
    return String.format(
        Locale.ROOT,
        "What %s more buys: %s. %s, %s.",
        Phrase.money(more.money(), list.currency()),
        more.packs().stream().map(BuyListSheet::change).collect(Collectors.joining(", ")),
        shortage(list.within().shortagePieces(), more.outcome().shortagePieces()),
        chance(
            list.within().nothingRunsOutProbability(), more.outcome().nothingRunsOutProbability()));
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

  private static Table<BuyList.Line> lines(BuyList list) {
    return new Table<>(
        "buy-list.csv",
        "Buy in this order (" + list.currency() + ")",
        columns(),
        list.lines(),
        "Nothing to buy.");
  }

  private static List<Column<BuyList.Line>> columns() {
    return List.of(
        Column.csvOnly("rank", Format.COUNT, BuyList.Line::rank),
        Column.of("style", "Style", Format.TEXT, "Style.", line -> line.item().style()),
        Column.of("size", "Size", Format.TEXT, "Size.", line -> line.item().size()),
        Column.of("colour", "Colour", Format.TEXT, "Colour.", line -> line.item().colour()),
        Column.sheetOnly(
            "Rank",
            Format.COUNT,
            "Order to buy in: what the budget pays for first, then floors before the rest, then"
                + " the largest fall of shortage for the money; lines without a price last.",
            BuyList.Line::rank),
        Column.of("packs", "Packs", Format.COUNT, "Whole packs to buy.", BuyList.Line::packs),
        Column.of("pieces", "Pieces", Format.COUNT, "Pieces in them.", BuyList.Line::pieces),
        Column.sheetOnly(
            "Why",
            Format.TEXT,
            "Whether the packs fill up to the floor or cover expected losses.",
            line -> line.forFloor() ? "below the floor" : "expected losses"),
        Column.of(
            "cost",
            "Cost",
            Format.MONEY,
            "Money for these packs; empty where the price is not known.",
            BuyList.Line::cost),
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
        Column.<BuyList.Line>of(
                "within_budget",
                "Within budget",
                Format.YES_NO,
                "Whether the budget pays for it; always yes where no Budget is set.",
                BuyList.Line::withinBudget)
            .toned(line -> line.withinBudget() ? Tone.GOOD : Tone.WATCH));
  }

  private static Table<BuyList.Point> curve(BuyList list) {
    return new Table<>(
        "",
        "What each amount of money does (" + list.currency() + ")",
        List.of(
            Column.sheetOnly(
                "Money",
                Format.MONEY,
                "Money spent from the top of the list down.",
                BuyList.Point::money),
            Column.sheetOnly(
                "Short on average",
                Format.NUMBER,
                "Pieces missed over the planned hours on average; important ones count more.",
                BuyList.Point::shortagePieces),
            Column.sheetOnly(
                "Chance nothing runs out",
                Format.PROBABILITY,
                "Chance that no important item runs out over the planned hours.",
                BuyList.Point::nothingRunsOutProbability)),
        list.curve().size() < 2 ? List.of() : list.curve(),
        list.lines().isEmpty() ? "Nothing to buy." : "Nothing listed has a price.");
  }
}
