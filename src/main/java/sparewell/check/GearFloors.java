package sparewell.check;

import java.util.Map;
import java.util.stream.Collectors;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;

/** Gear of which more is kept than is needed at once, since nobody said how much to carry. */
final class GearFloors implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    int floor = season.settings().carryAtLeast();
    Map<String, Boolean> told =
        season.stock().stream()
            .collect(
                Collectors.toMap(row -> row.item().style(), GearFloors::says, Boolean::logicalOr));
    for (Style style : season.styles()) {
      if (style.gear()
          && style.carryAtLeast().isEmpty()
          && !told.getOrDefault(style.name(), true)
          && floor > style.neededTogether()) {
        findings.add(
            Code.GEAR_WITHOUT_FLOOR, style.origin().under("Carry at least"), style.name(), floor);
      }
    }
  }

  private static boolean says(StockRow row) {
    return row.carryAtLeast().isPresent();
  }
}
