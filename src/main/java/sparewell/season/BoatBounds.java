package sparewell.season;

import sparewell.units.Length;
import sparewell.units.LengthUnit;

/** Where on a trailered boat anything can stand. The bounds are common practice, no source. */
public final class BoatBounds {
  public static final Length FURTHEST_FORWARD = Length.of(8, LengthUnit.METRE);
  public static final Length FURTHEST_AFT = Length.of(1.5, LengthUnit.METRE);
  public static final Length FURTHEST_ASIDE = Length.of(1.5, LengthUnit.METRE);

  private BoatBounds() {}

  /** Whether a position lies on no boat. */
  public static boolean outside(Length fromTransom, Length fromCentreline) {
    return fromTransom.compareTo(FURTHEST_FORWARD) > 0
        || -fromTransom.micrometres() > FURTHEST_AFT.micrometres()
        || aside(fromCentreline);
  }

  /** Whether that is further off the centreline than any boat is wide. */
  public static boolean aside(Length fromCentreline) {
    return Math.abs(fromCentreline.micrometres()) > FURTHEST_ASIDE.micrometres();
  }
}
