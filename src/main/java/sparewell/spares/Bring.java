package sparewell.spares;

import java.util.Optional;
import sparewell.season.ItemId;
import sparewell.season.Place;

/**
 * Pieces to bring aboard from one place ashore.
 *
 * @param item which
 * @param pieces how many, &gt; 0
 * @param from where they lie
 * @param to the place aboard that holds most of the item, else of its style; absent where nothing
 *     of the style is aboard
 * @param shortageSavedPieces importance-weighted fall of the item's expected shortage by all that
 *     is brought of it
 */
public record Bring(
    ItemId item, int pieces, Place from, Optional<Place> to, double shortageSavedPieces) {}
