package sparewell.stock;

import java.util.Optional;
import sparewell.season.ItemId;
import sparewell.season.Place;

/**
 * Pieces of an item put from one place to another, as a plan asks for.
 *
 * @param pieces how many, &gt; 0
 * @param from where they lie; absent where they are bought
 * @param to where they go; {@link #OF_CHOICE} where the angler chooses
 */
public record PieceMove(ItemId item, int pieces, Optional<Place> from, Place to) {
  /** Some place aboard of the angler's choice. */
  public static final Place OF_CHOICE = new Place("", "");
}
