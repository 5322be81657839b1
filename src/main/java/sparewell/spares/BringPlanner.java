package sparewell.spares;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import sparewell.season.Season;
import sparewell.stock.Holding;
import sparewell.stock.Homes;
import sparewell.stock.OnHand;

/** Turns pieces to bring into moves from place to place. */
final class BringPlanner {
  private BringPlanner() {}

  /**
   * The moves, the largest fall of expected shortage first, then in the order of the workbook.
   *
   * @param packed boxes that are packed anew afterwards, so that nothing is brought into them
   */
  static List<Bring> of(Season season, List<SparesRow> rows, OnHand onHand, Set<String> packed) {
    Homes homes = new Homes(season, onHand, packed);
    List<Bring> moves = new ArrayList<>();
    for (SparesRow row : rows) {
      int left = row.bringAboard();
      if (left == 0) {
        continue;
      }
      List<Holding> sources =
          onHand.holdings().stream()
              .filter(holding -> holding.ashore() && holding.item().equals(row.item()))
              .sorted(Holding.FULLEST_FIRST)
              .toList();
      for (Holding source : sources) {
        int pieces = Math.min(left, source.pieces());
        if (pieces > 0) {
          moves.add(
              new Bring(
                  row.item(),
                  pieces,
                  source.place(),
                  homes.of(row.item()),
                  homes.open(row.item()),
                  row.shortageSavedByBringing()));
          left -= pieces;
        }
      }
    }
    moves.sort(Comparator.comparingDouble(Bring::shortageSavedPieces).reversed());
    return moves;
  }
}
