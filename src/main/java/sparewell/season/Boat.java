package sparewell.season;

import java.util.Optional;
import sparewell.units.Length;
import sparewell.units.Mass;

/**
 * Figures from the boat's capacity plate and from the angler's own tests; each absent where not
 * given.
 *
 * @param plateWeight the plate's line for persons, motor and gear
 * @param platePersonsWeight the plate's line for persons
 * @param plateIncludesMotor whether {@code plateWeight} includes the motor (outboards)
 * @param trimTest rise of the bow when a known weight was moved aft
 * @param heelTest change of heel when a known weight was moved across
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

  /** Nothing known. */
  public static final Boat UNKNOWN =
      new Boat(Optional.empty(), Optional.empty(), true, Optional.empty(), Optional.empty());
}
