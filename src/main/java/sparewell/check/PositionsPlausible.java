package sparewell.check;

import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Compartment;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.units.Length;
import sparewell.units.LengthUnit;

/** Positions outside any trailered boat. The bounds are common practice, no source. */
final class PositionsPlausible implements Rule {

  private static final double FURTHEST_FORWARD_M = 8;
  private static final double FURTHEST_AFT_M = 1.5;
  private static final double FURTHEST_ASIDE_M = 1.5;

  @Override
  public void check(Season season, Findings findings) {
    for (Compartment c : season.compartments()) {
      if (!c.ashore()) {
        check(findings, c.origin(), c.name(), c.fromTransom(), c.fromCentreline());
      }
    }
    for (FixedLoad load : season.loads()) {
      check(findings, load.origin(), load.name(), load.fromTransom(), load.fromCentreline());
    }
  }

  private static void check(
      Findings findings, Cell at, String name, Length fromTransom, Length fromCentreline) {
    double forward = fromTransom.in(LengthUnit.METRE);
    double aside = Math.abs(fromCentreline.in(LengthUnit.METRE));
    if (forward > FURTHEST_FORWARD_M) {
      findings.add(Code.POSITION_DOUBTFUL, at, name, Shown.of(forward), "forward of the transom");
    }
    if (forward < -FURTHEST_AFT_M) {
      findings.add(Code.POSITION_DOUBTFUL, at, name, Shown.of(-forward), "behind the transom");
    }
    if (aside > FURTHEST_ASIDE_M) {
      findings.add(Code.POSITION_DOUBTFUL, at, name, Shown.of(aside), "off the centreline");
    }
  }
}
