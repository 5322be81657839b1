package sparewell.load;

import java.util.List;
import java.util.Optional;
import sparewell.units.Length;
import sparewell.units.Mass;

/**
 * The compartments aboard from above, to scale.
 *
 * @param compartments each as a rectangle
 * @param centreNow centre of the tackle as it stands; absent where it weighs nothing
 * @param centrePlanned its centre with the recommended moves made
 */
public record BoatPlan(
    List<Outline> compartments, Optional<Point> centreNow, Optional<Point> centrePlanned) {
  public BoatPlan {
    compartments = List.copyOf(compartments);
  }

  /** A place from above: station forward of the transom, side offset starboard positive. */
  public record Point(Length fromTransom, Length fromCentreline) {}

  /**
   * A compartment.
   *
   * @param name its name
   * @param centre its centre
   * @param along its length along the boat; absent where not given
   * @param across its width across the boat; absent where not given
   * @param weight what is in it, as far as known
   * @param weightKnown whether all of that is known
   * @param share of the tackle's weight, 0..1
   */
  public record Outline(
      String name,
      Point centre,
      Optional<Length> along,
      Optional<Length> across,
      Mass weight,
      boolean weightKnown,
      double share) {}
}
