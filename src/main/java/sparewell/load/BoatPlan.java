package sparewell.load;

import java.util.List;
import java.util.Optional;
import sparewell.units.Length;
import sparewell.units.Mass;

/**
 * The compartments aboard from above, to scale.
 *
 * @param compartments each as a rectangle; empty where a position lies outside any boat
 * @param ways the recommended moves from compartment to compartment, in the order of their steps
 * @param centreNow centre of the tackle as it stands; absent where it weighs nothing
 * @param centrePlanned its centre with the recommended moves made
 */
public record BoatPlan(
    List<Outline> compartments,
    List<Way> ways,
    Optional<Point> centreNow,
    Optional<Point> centrePlanned) {

  /** Boxes that go from one compartment to another. */
  public record Way(Point from, Point to, List<Moved> boxes) {}

  public record Moved(int step, String box) {}

  /** A place from above: station forward of the transom, side offset starboard positive. */
  public record Point(Length fromTransom, Length fromCentreline) {}

  /**
   * A compartment.
   *
   * @param along its length along the boat; absent where not given
   * @param across its width across the boat; absent where not given
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
