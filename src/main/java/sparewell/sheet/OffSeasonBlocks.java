package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import sparewell.spares.OffSeason;
import sparewell.spares.OffSeason.CauseLine;
import sparewell.spares.OffSeason.StyleLine;
import sparewell.table.Block;
import sparewell.table.Table;

/** The off-season part of the buy list: what last season cost, and what a whole next one needs. */
final class OffSeasonBlocks {
  private static final Columns<StyleLine> STYLES = Columns.of("Last season by style");
  private static final Columns<CauseLine> CAUSES = Columns.of("Last season by cause");

  private OffSeasonBlocks() {}

  static List<Block> of(OffSeason view, String currency) {
    int unpriced = view.total().unpricedPieces();
    Lines lines = new Lines();
    lines.heading("For the off-season");
    lines.plain(
        "From %s to %s you lost %s%s%s in %.0f hours afloat. The table says what to buy for"
            + " a season of as many hours.",
        view.from(),
        view.to(),
        Phrase.count(view.total().pieces(), "piece"),
        view.total().money().signum() == 0
            ? ""
            : " worth " + Phrase.money(view.total().money(), currency),
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
    return STYLES.table(
        view.styles(),
        List.of(
            STYLES.column("Style", StyleLine::style),
            STYLES.column("Lost last season", line -> line.lost().pieces()),
            STYLES.column("Worth", line -> line.lost().money()),
            STYLES.column("Expected next season", StyleLine::expectedLossPieces),
            STYLES.column("On hand", StyleLine::onHand),
            STYLES.column("Start with", StyleLine::wanted),
            STYLES.column("Buy packs", StyleLine::buyPacks),
            STYLES.column("Cost", StyleLine::cost)),
        currency);
  }

  private static Table<CauseLine> causes(OffSeason view, String currency) {
    return CAUSES.table(
        view.causes(),
        List.of(
            CAUSES.column("Cause", line -> line.cause().word()),
            CAUSES.column("Pieces", line -> line.lost().pieces()),
            CAUSES.column("Worth", line -> line.lost().money())),
        currency);
  }
}
