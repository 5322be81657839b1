package sparewell.sheet;

import java.util.Map;
import sparewell.season.ItemId;

/**
 * Figures that the last run left in the workbook.
 *
 * @param figures figures of its front page as shown, by name
 * @param carries pieces to carry of each item; empty where its sheet is gone
 * @param runOuts chance that an item ran out with what was aboard; empty where its sheet is gone
 * @param lost pieces of each style lost so far; empty where its sheet is gone
 */
public record LastRun(
    Map<String, String> figures,
    Map<ItemId, Integer> carries,
    Map<ItemId, Double> runOuts,
    Map<String, Integer> lost) {
  public LastRun {
    figures = Map.copyOf(figures);
    carries = Map.copyOf(carries);
    runOuts = Map.copyOf(runOuts);
    lost = Map.copyOf(lost);
  }
}
