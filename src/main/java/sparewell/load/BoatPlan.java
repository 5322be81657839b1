package sparewell.load;

import java.util.List;
import java.util.Optional;
import sparewell.units.Length;

/**
 * What a drawing of the boat from above shows beside its compartments.
 *
 * @param ways the recommended moves from compartment to compartment, in the order of their steps
 * @param centreNow centre of the tackle as it stands; absent where it weighs nothing
 * @param centrePlanned its centre with the recommended moves made
 */
public record BoatPlan(List<Way> ways, Optional<Point> centreNow, Optional<Point> centrePlanned) {
  /** Boxes that go from one compartment to another. */
  public record Way(Point from, Point to, List<Moved> boxes) {}

  public record Moved(int step, String box) {}

  /** A place from above: station forward of the transom, side offset starboard positive. */
  public record Point(Length fromTransom, Length fromCentreline) {}
}
