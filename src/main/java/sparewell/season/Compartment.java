package sparewell.season;

import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.units.Length;
import sparewell.units.Mass;

/**
 * A compartment of the boat, or storage ashore.
 *
 * @param fromTransom station of its centre, forward of the transom positive
 * @param fromCentreline offset of its centre, starboard positive
 * @param size inner size, where all three are known
 * @param atHand whether it is within reach all day
 * @param ashore whether it is home storage, not aboard
 * @param positionAt the cell to look at where its position is doubted
 */
public record Compartment(
    String name,
    Length fromTransom,
    Length fromCentreline,
    Optional<Dimensions> size,
    Optional<Mass> maxLoad,
    boolean atHand,
    boolean ashore,
    Cell positionAt,
    Cell origin) {}
