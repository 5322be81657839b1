package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sparewell.spares.OffSeason;
import sparewell.spares.OffSeason.CauseLine;
import sparewell.spares.OffSeason.StyleLine;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Table;

/** The off-season part of the buy list: what last season cost, and what a whole next one needs. */
final class OffSeasonBlocks {
  private OffSeasonBlocks() {}

  static List<Block> of(OffSeason view, String currency) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Text(
            List.of(
                Block.Line.heading("For the off-season"),
                Block.Line.of(
                    String.format(
                        Locale.ROOT,
                        "From %s to %s you lost %s worth %s%s in %.0f hours afloat. The table"
                            + " says what to buy for a season of as many hours.",
                        view.from(),
                        view.to(),
                        Phrase.count(view.total().pieces(), "piece"),
                        Phrase.money(view.total().money(), currency),
                        view.total().unpricedPieces() == 0
                            ? ""
                            : " (and "
                                + Phrase.count(view.total().unpricedPieces(), "piece")
                                + " without a price)",
                        view.afloatHours())))));
    blocks.add(new Block.Rows(styles(view, currency)));
    blocks.add(new Block.Rows(causes(view, currency)));
    Charts.months(view).ifPresent(blocks::add);
    return blocks;
  }

  private static Table<StyleLine> styles(OffSeason view, String currency) {
    return new Table<>(
        "",
        "Last season's losses and next season's needs by style (" + currency + ")",
        List.of(
            Column.sheetOnly("Style", Format.TEXT, "Style.", StyleLine::style),
            Column.<StyleLine>sheetOnly(
                    "Lost last season",
                    Format.COUNT,
                    "Pieces lost in the last twelve months.",
                    line -> line.lost().pieces())
                .quiet()
                .summed(),
            Column.<StyleLine>sheetOnly(
                    "Worth",
                    Format.MONEY,
                    "What they cost at today's pack price; pieces without a price count nothing.",
                    line -> line.lost().money())
                .quiet()
                .summed(),
            Column.<StyleLine>sheetOnly(
                    "Expected next season",
                    Format.NUMBER,
                    "Pieces expected to be lost in as many hours.",
                    StyleLine::expectedLossPieces)
                .quiet(),
            Column.sheetOnly(
                "On hand", Format.COUNT, "Pieces aboard and ashore.", StyleLine::onHand),
            Column.sheetOnly(
                "Start with",
                Format.COUNT,
                "Pieces to start the season with, so that each item lasts with the chance wanted.",
                StyleLine::wanted),
            Column.<StyleLine>sheetOnly(
                    "Buy packs",
                    Format.COUNT,
                    "Whole packs to buy in the off-season.",
                    StyleLine::buyPacks)
                .quiet()
                .summed(),
            Column.<StyleLine>sheetOnly(
                    "Cost",
                    Format.MONEY,
                    "Money for them; empty where a price is not known.",
                    StyleLine::cost)
                .quiet()
                .summed()),
        view.styles(),
        "No style in stock.");
  }

  private static Table<CauseLine> causes(OffSeason view, String currency) {
    return new Table<>(
        "",
        "Last season's losses by cause (" + currency + ")",
        List.of(
            Column.sheetOnly(
                "Cause", Format.TEXT, "Why the pieces were lost.", line -> line.cause().word()),
            Column.<CauseLine>sheetOnly(
                    "Pieces", Format.COUNT, "Pieces lost.", line -> line.lost().pieces())
                .summed(),
            Column.<CauseLine>sheetOnly(
                    "Worth",
                    Format.MONEY,
                    "What they cost at today's pack price.",
                    line -> line.lost().money())
                .summed()),
        view.causes(),
        "No loss in the last twelve months.");
  }
}
