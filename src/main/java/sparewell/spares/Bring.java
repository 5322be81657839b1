package sparewell.spares;

import java.util.Optional;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.stock.PieceMove;

/**
 * Pieces to bring aboard from one place ashore.
 *
 * @param pieces how many, &gt; 0
 * @param from where they lie
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
  /** As a move. */
  public PieceMove move() {
    return new PieceMove(item, pieces, Optional.of(from), to.orElse(PieceMove.OF_CHOICE));
  }
}
