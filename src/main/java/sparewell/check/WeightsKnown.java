package sparewell.check;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Compartment;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;

/** Styles with stock aboard whose pieces have no weight. */
final class WeightsKnown implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    Map<String, Style> styles = season.stylesByName();
    Map<String, Compartment> compartments = season.compartmentsByName();
    Map<ItemId, Boolean> weighed = new HashMap<>();
    season
        .stock()
        .forEach(row -> weighed.merge(row.item(), row.weightEach().isPresent(), (a, b) -> a || b));
    Map<String, Integer> pieces = new LinkedHashMap<>();
    for (StockRow row : season.stock()) {
      Style style = styles.get(row.item().style());
      if (style.weightEach().isEmpty()
          && !weighed.get(row.item())
          && !compartments.get(row.place().compartment()).ashore()
          && row.countedPieces() > 0) {
        pieces.merge(style.name(), row.countedPieces(), Integer::sum);
      }
    }
    pieces.forEach(
        (name, count) ->
            findings.add(
                Code.STYLE_WITHOUT_WEIGHT,
                styles.get(name).origin().under("Weight each"),
                name,
                count));
  }
}
