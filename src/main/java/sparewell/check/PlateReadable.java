package sparewell.check;

import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Boat;
import sparewell.season.FixedLoad;
import sparewell.season.Season;

/** Plate figures that are probably swapped, or that nothing is compared with. */
final class PlateReadable implements Rule {

  @Override
  public void check(Season season, Findings findings) {
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
