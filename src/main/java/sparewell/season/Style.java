package sparewell.season;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.units.Mass;

/**
 * A style of lure, or of rods, nets and tools.
 *
 * @param family the group whose loss rates are estimated together
 * @param countedInPacks whether Count and Carry at least are packs
 * @param piecesPerPack pieces in one bought pack, at least 1
 * @param carryAtLeast least pieces of each of its items, where set
 * @param neededAtOnce pieces in use at the same time, for the style as a whole; 0 where not given
 * @param spareFactor what {@code neededAtOnce} is multiplied with, &gt; 0
 * @param importance weight of a missing piece of this style beside others, &ge; 0
 */
public record Style(
    String name,
    String family,
    Optional<Mass> weightEach,
    boolean countedInPacks,
    int piecesPerPack,
    Optional<BigDecimal> packPrice,
    OptionalInt carryAtLeast,
    int neededAtOnce,
    double spareFactor,
    double importance,
    OptionalDouble chanceWantedProbability,
    Cell origin) {

  /** Words for gear in a style's name or family (common practice, no source). */
  private static final Set<String> GEAR =
      Set.of("rod", "rods", "reel", "reels", "net", "nets", "tool", "tools", "pliers", "scissors");

  /**
   * Returns whether it is most likely gear, which nobody throws and hardly anybody loses: so
   * called, or needed at once. To be asked only where nothing was logged of it.
   */
  public boolean gear() {
    return neededAtOnce > 0
        || Stream.of((name + " " + family).toLowerCase(Locale.ROOT).split("\\P{L}+"))
            .anyMatch(GEAR::contains);
  }

  /** Pieces of the style that must be at hand together: ceil(needed at once x spare factor). */
  public int neededTogether() {
    return (int) Math.ceil(neededAtOnce * spareFactor - 1e-9);
  }
}
