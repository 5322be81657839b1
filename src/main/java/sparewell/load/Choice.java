package sparewell.load;

import java.util.Optional;
import sparewell.stow.Moment;
import sparewell.units.Length;

/**
 * The whole boat under one choice: as it is, with the plan carried out, or with the plan's boxes
 * left ashore.
 *
 * @param plateMarginKg margin to the plate's first line, kg; absent where not checked
 * @param bowRise rise of the bow against now; absent without a test, and where weight leaves the
 *     boat (the test does not tell that)
 * @param heelDegrees starboard down positive; absent without a test
 */
public record Choice(
    Moment allUp,
    Optional<Double> plateMarginKg,
    Optional<Length> bowRise,
    Optional<Double> heelDegrees) {}
