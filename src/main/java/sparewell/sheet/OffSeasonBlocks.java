package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import sparewell.spares.OffSeason;
import sparewell.spares.OffSeason.CauseLine;
import sparewell.spares.OffSeason.StyleLine;
import sparewell.table.Block;
import sparewell.table.Format;
import sparewell.table.Table;

/** The off-season part of the buy list: what last season cost, and what a whole next one needs. */
final class OffSeasonBlocks {
  private OffSeasonBlocks() {}

  static List<Block> of(OffSeason view, String currency) {
    int unpriced = view.total().unpricedPieces();
    Lines lines = new Lines();
    lines.heading("For the off-season");
    lines.plain(
        "From %s to %s you lost %s worth %s%s in %.0f hours afloat. The table says what to buy for"
            + " a season of as many hours.",
        view.from(),
        view.to(),
        Phrase.count(view.total().pieces(), "piece"),
        Phrase.money(view.total().money(), currency),
        unpriced == 0 ? "" : " (and " + Phrase.count(unpriced, "piece") + " without a price)",
        view.afloatHours());
    List<Block> blocks = new ArrayList<>();
    blocks.add(lines.block());
    blocks.add(new Block.Rows(styles(view, currency)));
    blocks.add(new Block.Rows(causes(view, currency)));
    Charts.months(view).ifPresent(blocks::add);
    return blocks;
  }

  private static Table<StyleLine> styles(OffSeason view, String currency) {
    return Table.onSheet(
        "Last season's losses and next season's needs by style (" + currency + ")",
        List.of(
            Format.TEXT.onSheet("Style", "Style.", StyleLine::style),
            Format.COUNT
                .<StyleLine>onSheet(
                    "Lost last season",
                    "Pieces lost in the last twelve months.",
                    line -> line.lost().pieces())
                .quiet()
                .summed(),
            Format.MONEY
                .<StyleLine>onSheet(
                    "Worth",
                    "What they cost at today's pack price; pieces without a price count nothing.",
                    line -> line.lost().money())
                .quiet()
                .summed(),
            Format.NUMBER
                .<StyleLine>onSheet(
                    "Expected next season",
                    "Pieces expected to be lost in as many hours.",
                    StyleLine::expectedLossPieces)
                .quiet(),
            Format.COUNT.onSheet("On hand", "Pieces aboard and ashore.", StyleLine::onHand),
            Format.COUNT.onSheet(
                "Start with",
                "Pieces to start the season with, so that each item lasts with the chance wanted.",
                StyleLine::wanted),
            Format.COUNT
                .<StyleLine>onSheet(
                    "Buy packs", "Whole packs to buy in the off-season.", StyleLine::buyPacks)
                .quiet()
                .summed(),
            Format.MONEY
                .<StyleLine>onSheet(
                    "Cost", "Money for them; empty where a price is not known.", StyleLine::cost)
                .quiet()
                .summed()),
        view.styles(),
        "No style in stock.");
  }

  private static Table<CauseLine> causes(OffSeason view, String currency) {
    return Table.onSheet(
        "Last season's losses by cause (" + currency + ")",
        List.of(
            Format.TEXT.onSheet("Cause", "Why the pieces were lost.", line -> line.cause().word()),
            Format.COUNT
                .<CauseLine>onSheet("Pieces", "Pieces lost.", line -> line.lost().pieces())
                .summed(),
            Format.MONEY
                .<CauseLine>onSheet(
                    "Worth", "What they cost at today's pack price.", line -> line.lost().money())
                .summed()),
        view.causes(),
        "No loss in the last twelve months.");
  }
}
