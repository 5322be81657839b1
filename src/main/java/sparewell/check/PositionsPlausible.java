package sparewell.check;

import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.BoatBounds;
import sparewell.season.Compartment;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.units.Length;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Positions outside any trailered boat. */
final class PositionsPlausible implements Rule {
  @Override
  public void check(Season season, Findings findings) {
    UnitSystem units = season.settings().units();
    for (Compartment c : season.compartments()) {
      if (!c.ashore()) {
        check(findings, units, c.origin(), c.name(), c.fromTransom(), c.fromCentreline());
      }
    }
    for (FixedLoad l : season.loads()) {
      check(findings, units, l.origin(), l.name(), l.fromTransom(), l.fromCentreline());
    }
  }

  private static void check(
      Findings findings,
      UnitSystem units,
      Cell row,
      String name,
      Length fromTransom,
      Length fromCentreline) {
    Cell at = row.under("From transom");
    Cell aside = row.under("From centreline");
    Length behind = new Length(-fromTransom.micrometres());
    Length off = new Length(Math.abs(fromCentreline.micrometres()));
    say(
        findings,
        units,
        at,
        name,
        fromTransom,
        BoatBounds.FURTHEST_FORWARD,
        "forward of the transom");
    say(findings, units, at, name, behind, BoatBounds.FURTHEST_AFT, "behind the transom");
    say(findings, units, aside, name, off, BoatBounds.FURTHEST_ASIDE, "off the centreline");
  }

  private static void say(
      Findings findings,
      UnitSystem units,
      Cell at,
      String name,
      Length found,
      Length furthest,
      String where) {
    if (found.compareTo(furthest) > 0) {
      findings.add(
          Code.POSITION_DOUBTFUL,
          at,
          name,
          Spoken.length(found, units),
          where,
          Spoken.length(furthest, units));
    }
  }
}
