package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import sparewell.spares.BuyList;
import sparewell.spares.BuyList.Point;
import sparewell.spares.OffSeason;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The buy list, in the order to buy. */
public final class BuyListSheet {
  public static final String NAME = "Buy list";
  private static final Columns<BuyList.Line> LINES = Columns.of("Buy list");
  private static final Columns<BuyList.Line> FLOORS = Columns.of("Buy list: floors");
  private static final Columns<Point> CURVE = Columns.of("Money");

  private BuyListSheet() {}

  public static ReportSheet of(BuyList list, Optional<OffSeason> offSeason) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(top(list));
    blocks.add(new Block.Rows(lines(list, false)));
    blocks.add(new Block.Rows(lines(list, true)));
    Table<Point> curve = curve(list);
    blocks.add(new Block.EndOfPrint());
    if (!curve.rows().isEmpty()) {
      Charts.money(curve).ifPresent(blocks::add);
      blocks.add(new Block.Rows(curve));
    }
    offSeason.ifPresent(view -> blocks.addAll(OffSeasonBlocks.of(view, list.currency())));
    return new ReportSheet(NAME, "What to buy first with the money available", blocks);
  }

  private static Block top(BuyList list) {
    Lines lines = new Lines();
    lines.add(action(list));
    budget(list, lines);
    list.more().ifPresent(more -> lines.plain(more(more, list)));
    long unpriced = list.lines().stream().filter(line -> line.cost().isEmpty()).count();
    if (unpriced > 0) {
      lines.strong(
          Tone.WATCH,
          "%s without a price: fill in Pack price to have %s weighed against money.",
          Phrase.count(unpriced, "line"),
          unpriced == 1 ? "it" : "them");
    }
    if (list.gapPieces() > 0) {
      lines.small(
          "No other choice for the same money lowers that by more than another %.4f pieces.",
          list.gapPieces());
    }
    return lines.block();
  }

  private static Block.Line action(BuyList list) {
    if (list.lines().isEmpty()) {
      return Phrase.strong("Nothing to buy: no item of the Stock sheet falls short.", Tone.GOOD);
    }
    List<BuyList.Line> needed = BuyWords.bought(list, false);
    String fills = BuyWords.fills(list);
    String end = fills.isEmpty() ? "." : "; " + fills + ".";
    if (!needed.isEmpty()) {
      boolean one = needed.stream().mapToInt(BuyList.Line::packs).sum() == 1;
      return Phrase.strong(
          Phrase.capital(BuyWords.wares(needed))
              + BuyWords.price(needed, list)
              + (BuyWords.cost(needed).isEmpty() ? ", " : " ")
              + BuyWords.effect(list, one ? "takes" : "take")
              + end,
          Tone.WATCH);
    }
    return list.part(false).isEmpty()
        ? Phrase.strong("Nothing is needed for the expected losses" + end, Tone.GOOD)
        : Phrase.strong("Your budget pays for nothing of what is needed.", Tone.WATCH);
  }

  private static void budget(BuyList list, Lines lines) {
    if (list.wanted().signum() == 0) {
      return;
    }
    String wanted = Phrase.money(list.wanted(), list.currency());
    if (list.budget().isEmpty()) {
      lines.plain(
          "Everything priced costs %s. No Budget is set in Settings, so no line is cut off.",
          wanted);
    } else {
      lines.plain(
          "That is %s of your %s%s. Budget is the money for this list: what you have spent does not"
              + " come off it, so lower it in Settings.",
          Phrase.money(list.spent(), list.currency()),
          Phrase.money(list.budget().get(), list.currency()),
          list.spent().compareTo(list.wanted()) == 0
              ? ""
              : "; everything priced would cost " + wanted);
    }
  }

  private static String more(BuyList.More more, BuyList list) {
    return Phrase.text(
        more.first() ? "What the first %s buys: %s. %s, %s." : "What %s more buys: %s. %s, %s.",
        Phrase.money(more.money(), list.currency()),
        changes(more.packs()),
        shortage(more.before().shortagePieces(), more.outcome().shortagePieces()),
        chance(
            more.before().nothingRunsOutProbability(), more.outcome().nothingRunsOutProbability()));
  }

  /** A change that the shown digits would hide is said to be as small as it is. */
  private static String shortage(double before, double after) {
    String was = Phrase.text("%.2f", before);
    String now = Phrase.text("%.2f", after);
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

  /** Packs bought on top, then packs left out for them. */
  private static String changes(List<BuyList.More.Change> changes) {
    Map<Boolean, String> words =
        changes.stream()
            .collect(
                Collectors.partitioningBy(
                    change -> change.packs() > 0,
                    Collectors.mapping(BuyListSheet::change, Collectors.joining(", "))));
    return words.get(true)
        + (words.get(false).isEmpty() ? "" : "; for these, leave out " + words.get(false));
  }

  private static String change(BuyList.More.Change change) {
    return Phrase.packs(Math.abs(change.packs()), Math.abs(change.pieces()))
        + " of "
        + change.item().spoken();
  }

  private static Table<BuyList.Line> lines(BuyList list, boolean fills) {
    return (fills ? FLOORS : LINES)
        .table(list.part(fills), columns(list.budget().isPresent(), fills), list.currency());
  }

  /** Columns without shortages where packs only fill floors: they would show as dashes. */
  private static List<Column<BuyList.Line>> columns(boolean limited, boolean fills) {
    return Columns.among(
        List.of(LINES.column("rank", BuyList.Line::rank)),
        BuyList.Line::item,
        LINES.column("packs", BuyList.Line::packs),
        LINES.column("pieces", BuyList.Line::pieces),
        LINES.column("cost", BuyList.Line::cost),
        LINES.column("cumulative_cost", BuyList.Line::cumulativeCost),
        LINES.column("shortage_before", BuyList.Line::shortageBeforePieces, !fills),
        LINES.column("shortage_after", BuyList.Line::shortageAfterPieces, !fills),
        LINES
            .column("within_budget", BuyList.Line::withinBudget, limited)
            .toned(line -> line.bought() ? Tone.GOOD : Tone.WATCH),
        EntryTable.into(BuyList.Line::into, BuyList.Line::open),
        EntryTable.done());
  }

  private static Table<Point> curve(BuyList list) {
    return CURVE.table(
        list.curve().size() < 2 ? List.of() : list.curve(),
        List.of(
            CURVE.column("Money", Point::money),
            CURVE.column("Short on average", Point::shortagePieces),
            CURVE.column("Chance nothing runs out", Point::nothingRunsOutProbability)),
        list.currency());
  }
}
