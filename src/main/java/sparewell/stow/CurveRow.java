package sparewell.stow;

import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.units.Length;

/**
 * The best that so many moved boxes can reach.
 *
 * @param moves most boxes that are moved
 * @param tackleCentre station of the tackle's centre; absent where no plan was found
 * @param gainPercent share of the way from the centre now to the best centre; 100 where there is
 *     nothing to gain; absent without a plan, and where the present stow breaks limits and every
 *     plan within them lies further forward
 * @param gapPercent by how much of the tackle's moment a better plan with so many moves could at
 *     most undercut this one; 0 means proven best; absent without a plan
 * @param feasible whether a plan within all limits was found
 */
public record CurveRow(
    int moves,
    Optional<Length> tackleCentre,
    OptionalDouble gainPercent,
    OptionalDouble gapPercent,
    boolean feasible) {}
