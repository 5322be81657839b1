package sparewell.check;

import java.util.List;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Boat;
import sparewell.season.BoatBounds;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.units.Length;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Rules for positions in the boat and its capacity plate. */
final class BoatRules {
  private BoatRules() {}

  /** Positions outside any trailered boat. */
  static void positionsPlausible(Season season, Findings findings) {
    UnitSystem units = season.settings().units();
    season.compartments().stream()
        .filter(c -> !c.ashore())
        .forEach(
            c ->
                position(
                    findings, units, c.origin(), c.name(), c.fromTransom(), c.fromCentreline()));
    season
        .loads()
        .forEach(
            l ->
                position(
                    findings, units, l.origin(), l.name(), l.fromTransom(), l.fromCentreline()));
  }

  private static void position(
      Findings findings,
      UnitSystem units,
      Cell row,
      String name,
      Length fromTransom,
      Length fromCentreline) {
    record Bound(String column, Length found, Length furthest, String where) {}
    Length behind = new Length(-fromTransom.micrometres());
    Length off = new Length(Math.abs(fromCentreline.micrometres()));
    for (Bound bound :
        List.of(
            new Bound(
                "From transom", fromTransom, BoatBounds.FURTHEST_FORWARD, "forward of the transom"),
            new Bound("From transom", behind, BoatBounds.FURTHEST_AFT, "behind the transom"),
            new Bound("From centreline", off, BoatBounds.FURTHEST_ASIDE, "off the centreline"))) {
      if (bound.found().compareTo(bound.furthest()) > 0) {
        findings.add(
            Code.POSITION_DOUBTFUL,
            row.under(bound.column()),
            name,
            Spoken.length(bound.found(), units),
            bound.where(),
            Spoken.length(bound.furthest(), units));
      }
    }
  }

  /** Plate figures that are probably swapped, or that nothing is compared with. */
  static void plateReadable(Season season, Findings findings) {
    Boat boat = season.boat();
    if (boat.platePersonsWeight().isEmpty()) {
      return;
    }
    boolean swapped =
        boat.plateWeight()
            .filter(total -> total.compareTo(boat.platePersonsWeight().get()) < 0)
            .isPresent();
    if (swapped) {
      findings.add(Code.PLATE_LINES_SWAPPED, Cell.ofSheet("Boat"));
    }
    boolean somebody =
        season.loads().stream().anyMatch(load -> load.kind() == FixedLoad.Kind.PERSON);
    if (!somebody) {
      findings.add(Code.NO_PERSON_LOADED, Cell.ofSheet("Boat"));
    }
  }
}
