package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
  public static final String NAME = "Spares";
  private static final Columns<Bring> BRINGS = Columns.of("Bring aboard");
  private static final Columns<SparesRow> SPARES = Columns.of("Spares");
  private static final Columns<SparesRow> OTHERS = Columns.of("Spares: enough");
  private static final Columns<IdleStyle> IDLE = Columns.of("Idle styles");

  /** Headings by which the next run finds what this one said of each item. */
  public static final List<String> OF_ITEM =
      List.of("Style", "Size", "Colour", "Carry", "Run-out chance now");

  /** Most items that need nothing and are printed: more would fill pages. */
  private static final int MOST_PRINTED_IDLE = 12;

  private SparesSheet() {}

  public static ReportSheet of(SparesReport report, BuyList buys) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(top(report, buys));
    List<SparesRow> needy = report.rows().stream().filter(row -> !enough(row)).toList();
    List<SparesRow> others = report.rows().stream().filter(SparesSheet::enough).toList();
    blocks.add(
        new Block.Rows(
            SPARES.table(mostNeededFirst(needy), columns(SPARES.column("cost", SparesRow::cost)))));
    if (!others.isEmpty() && others.size() <= MOST_PRINTED_IDLE) {
      blocks.add(others(others, ""));
    }
    blocks.add(new Block.Rows(brings(report.brings())));
    if (!report.idle().isEmpty()) {
      blocks.add(new Block.Rows(idle(report.idle())));
    }
    blocks.add(
        new Lines()
            .plain(report.horizon().words())
            .note("Carry", Phrase.important(report.outlook()))
            .block());
    blocks.add(new Block.EndOfPrint());
    if (others.size() > MOST_PRINTED_IDLE) {
      blocks.add(others(others, " (on screen only)"));
    }
    Charts.runOut(report.rows()).ifPresent(blocks::add);
    return new ReportSheet(
        NAME, "What to carry of every item, and what to bring aboard now", blocks);
  }

  private static Block top(SparesReport report, BuyList buys) {
    Lines lines = new Lines();
    lines.add(action(report, buys));
    Outlook outlook = report.outlook();
    if (outlook.nowProbability().isPresent()) {
      lines.plain(
          "Chance that nothing important runs out: %s now, %s after bringing aboard what lies"
              + " ashore, %s once you also bought the whole list.",
          Phrase.chance(outlook.nowProbability()),
          Phrase.chance(outlook.afterBringingProbability()),
          Phrase.chance(outlook.afterBuyingProbability()));
    }
    return lines.block();
  }

  private static Block.Line action(SparesReport report, BuyList buys) {
    if (report.rows().isEmpty()) {
      return Phrase.strong("Nothing to plan: the Stock sheet has no usable row.", Tone.GOOD);
    }
    List<String> parts = new ArrayList<>();
    int pieces = report.rows().stream().mapToInt(SparesRow::bringAboard).sum();
    if (pieces > 0) {
      long items = report.rows().stream().filter(row -> row.bringAboard() > 0).count();
      parts.add(
          Phrase.text(
              "bring %s of %s aboard (second table)",
              Phrase.count(pieces, "piece"), Phrase.count(items, "item")));
    }
    if (!buys.lines().isEmpty()) {
      parts.add(buy(buys));
    }
    return parts.isEmpty()
        ? Phrase.strong("Nothing to do: every item has what it should carry.", Tone.GOOD)
        : Phrase.strong("Do: " + String.join(", then ", parts) + ".", Tone.WATCH);
  }

  private static String buy(BuyList buys) {
    List<BuyList.Line> needed = BuyWords.bought(buys, false);
    List<BuyList.Line> now = needed.isEmpty() ? BuyWords.bought(buys, true) : needed;
    if (now.isEmpty()) {
      return "raise the budget: it covers nothing on the Buy list";
    }
    return "buy "
        + BuyWords.wares(now)
        + (needed.isEmpty() ? ", which only fills floors" : "")
        + " (Buy list)";
  }

  private static Table<Bring> brings(List<Bring> brings) {
    return BRINGS.table(
        brings,
        Columns.among(
            List.of(),
            Bring::item,
            BRINGS.column("From", move -> move.from().name()),
            BRINGS.column("Pieces", Bring::pieces),
            EntryTable.into(Bring::to, Bring::open),
            EntryTable.done()));
  }

  private static List<SparesRow> mostNeededFirst(List<SparesRow> rows) {
    return rows.stream()
        .sorted(
            Comparator.comparingDouble(
                row -> -row.importance() * row.losses().expectedShortage(row.aboard())))
        .toList();
  }

  private static Block others(List<SparesRow> rows, String where) {
    return new Block.Rows(
        OTHERS.table(rows, columns(Format.MONEY.inFile("cost", SparesRow::cost)), where));
  }

  private static boolean enough(SparesRow row) {
    return row.bringAboard() + row.buyPacks() == 0;
  }

  private static List<Column<SparesRow>> columns(Column<SparesRow> cost) {
    return Columns.among(
        List.of(),
        SparesRow::item,
        SPARES
            .column("To do", SparesSheet::toDo)
            .toned(
                row ->
                    enough(row)
                        ? Tone.GOOD
                        : row.aboard() == 0 && row.used() ? Tone.BAD : Tone.WATCH),
        SPARES.column("aboard", SparesRow::aboard),
        SPARES.column("ashore", SparesRow::ashore),
        Format.HOURS.inFile("planning_hours", SparesRow::planningHours),
        SPARES.column("expected_loss", SparesRow::expectedLossPieces),
        SPARES.column("run_out_chance_now", SparesRow::runOutNowProbability),
        SPARES.column("floor", SparesRow::floor),
        SPARES.column("carry", SparesRow::carry),
        SPARES.column("run_out_chance_at_carry", SparesRow::runOutAtCarryProbability),
        SPARES.column("reason", row -> row.reason().words()),
        Format.COUNT.inFile("bring_aboard", SparesRow::bringAboard),
        Format.COUNT.inFile("buy_pieces", SparesRow::buyPieces),
        Format.COUNT.inFile("buy_packs", SparesRow::buyPacks),
        cost);
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
    boolean unweighed = idle.stream().anyMatch(style -> style.unweighedPieces() > 0);
    return IDLE.table(
        idle,
        List.of(
            IDLE.column("Style", IdleStyle::style),
            IDLE.column("Pieces aboard", IdleStyle::pieces),
            IDLE.column("Last thrown", IdleStyle::lastThrown),
            IDLE.column("Weight", IdleStyle::knownWeight),
            IDLE.column("Pieces without weight", IdleStyle::unweighedPieces, unweighed)));
  }
}
