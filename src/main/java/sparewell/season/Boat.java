package sparewell.season;

import java.util.Optional;
import sparewell.units.Length;
import sparewell.units.Mass;

/**
 * Figures from the boat's capacity plate and from the angler's own tests; each absent where not
 * given.
 *
 * @param plateIncludesMotor whether {@code plateWeight} includes the motor (outboards)
 */
public record Boat(
    Optional<Mass> plateWeight,
    Optional<Mass> platePersonsWeight,
    boolean plateIncludesMotor,
    Optional<TrimTest> trimTest,
    Optional<HeelTest> heelTest) {
  /** A known weight moved a known distance aft, and how far the bow rose. */
  public record TrimTest(Mass weight, Length distance, Length bowChange) {}

  /** A known weight moved a known distance across, and the change of heel in degrees. */
  public record HeelTest(Mass weight, Length distance, double angleDegrees) {}

  public static final Boat UNKNOWN =
      new Boat(Optional.empty(), Optional.empty(), true, Optional.empty(), Optional.empty());
}
