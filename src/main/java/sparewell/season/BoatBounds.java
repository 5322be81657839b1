package sparewell.season;

import sparewell.units.Length;
import sparewell.units.LengthUnit;

/** Bounds of positions on a trailered boat: common practice, no source. */
public final class BoatBounds {
  public static final Length FURTHEST_FORWARD = Length.of(8, LengthUnit.METRE);
  public static final Length FURTHEST_AFT = Length.of(1.5, LengthUnit.METRE);
  public static final Length FURTHEST_ASIDE = Length.of(1.5, LengthUnit.METRE);

  private BoatBounds() {}

  /** True for a position on no trailered boat. */
  public static boolean outside(Length fromTransom, Length fromCentreline) {
    return fromTransom.compareTo(FURTHEST_FORWARD) > 0
        || -fromTransom.micrometres() > FURTHEST_AFT.micrometres()
        || aside(fromCentreline);
  }

  /** True for an offset wider than any such boat. */
  public static boolean aside(Length fromCentreline) {
    return Math.abs(fromCentreline.micrometres()) > FURTHEST_ASIDE.micrometres();
  }
}
