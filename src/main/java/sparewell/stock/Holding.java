package sparewell.stock;

import java.util.Comparator;
import java.util.Optional;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.units.Mass;

/**
 * Pieces of an item on hand in one place.
 *
 * @param ashore whether the place is home storage
 * @param pieces on hand now, &ge; 0
 */
public record Holding(
    ItemId item, Place place, boolean ashore, int pieces, Optional<Mass> weightEach) {
  /** Most pieces first; of equals the place that is first by name. */
  public static final Comparator<Holding> FULLEST_FIRST =
      Comparator.comparing((Holding holding) -> -holding.pieces())
          .thenComparing(Holding::place, Place.BY_NAME);

  /** Mass of all pieces, where known; nothing weighs nothing. */
  public Optional<Mass> weight() {
    return pieces == 0 ? Optional.of(Mass.ZERO) : weightEach.map(each -> each.times(pieces));
  }
}
