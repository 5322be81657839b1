package sparewell.load;

import java.util.Optional;
import sparewell.season.Boat;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.MassUnit;

/**
 * Trim and list from the angler's own tests, as in an inclining experiment.
 *
 * <p>Valid for small changes (a few degrees, a few centimetres) of the boat loaded much as in the
 * test, at rest, in calm water; not at speed, not for a boat that heels far. Without a test there
 * is no figure.
 *
 * @see "small-angle hydrostatics: trim change = moment / moment to change trim; tan(heel) = weight
 *     x distance / (displacement x metacentric height); Nicholls's Seamanship and Nautical
 *     Knowledge, p. 527 for the trim formula"
 */
public final class OwnTests {
  private OwnTests() {}

  /**
   * Rise of the bow when the load's moment about the transom falls by {@code aftMomentKgM}: b x M /
   * (w x d), where the test moved w aft by d and the bow rose by b.
   *
   * @param aftMomentKgM moment moved aft, kg m; negative where weight goes forward
   * @return up positive; absent where there is no usable test
   */
  public static Optional<Length> bowRise(Optional<Boat.TrimTest> test, double aftMomentKgM) {
    return test.filter(OwnTests::usable)
        .map(
            known -> {
              double testMoment =
                  known.weight().in(MassUnit.KILOGRAM) * known.distance().in(LengthUnit.METRE);
              double metres = known.bowChange().in(LengthUnit.METRE) * aftMomentKgM / testMoment;
              return Length.of(metres, LengthUnit.METRE);
            });
  }

  /**
   * Heel under a side moment: tan(heel) = M x tan(a) / (w x d), where the test moved w across by d
   * and the boat heeled by a.
   *
   * @param sideMomentKgM starboard positive, kg m
   * @return degrees, starboard down positive; absent where there is no usable test
   */
  public static Optional<Double> heelDegrees(Optional<Boat.HeelTest> test, double sideMomentKgM) {
    return test.filter(OwnTests::usable)
        .map(
            known -> {
              double testMoment =
                  known.weight().in(MassUnit.KILOGRAM) * known.distance().in(LengthUnit.METRE);
              double slope = Math.tan(Math.toRadians(Math.abs(known.angleDegrees())));
              return Math.toDegrees(Math.atan(sideMomentKgM * slope / Math.abs(testMoment)));
            });
  }

  /** True for a test whose weight, distance and change of the bow are not zero. */
  static boolean usable(Boat.TrimTest test) {
    return test.weight().milligrams() > 0
        && test.distance().micrometres() != 0
        && test.bowChange().micrometres() != 0;
  }

  /** True for a test whose weight, distance and angle are not zero, the angle under 15 degrees. */
  static boolean usable(Boat.HeelTest test) {
    double angle = Math.abs(test.angleDegrees());
    return test.weight().milligrams() > 0
        && test.distance().micrometres() != 0
        && angle > 0
        && angle < 15;
  }
}
