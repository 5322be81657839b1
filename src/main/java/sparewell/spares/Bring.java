package sparewell.spares;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.stock.Holding;
import sparewell.stock.Homes;
import sparewell.stock.OnHand;
import sparewell.stock.PieceMove;

/**
 * Pieces to bring aboard from one place ashore.
 *
 * @param to the place aboard where the item belongs; absent where there is no place aboard
 * @param open whether another place aboard would do as well
 * @param shortageSavedPieces importance-weighted fall of the item's expected shortage by all that
 *     is brought of it
 */
public record Bring(
    ItemId item,
    int pieces,
    Place from,
    Optional<Place> to,
    boolean open,
    double shortageSavedPieces) {
  public PieceMove move() {
    return new PieceMove(item, pieces, Optional.of(from), to.orElse(PieceMove.OF_CHOICE));
  }

  /**
   * The pieces to bring, the largest fall of expected shortage first, then in the order of the
   * workbook.
   *
   * @param packed boxes that are packed anew afterwards, so that nothing is brought into them
   */
  static List<Bring> plan(Season season, List<SparesRow> rows, OnHand onHand, Set<String> packed) {
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
