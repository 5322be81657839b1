package sparewell.sheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import sparewell.season.ItemId;

/**
 * What the last run left in the workbook.
 *
 * @param figures figures of its front page as shown, by name
 * @param carries pieces to carry of each item; empty where its sheet is gone
 */
public record LastRun(Map<String, String> figures, Map<ItemId, Integer> carries) {
  public LastRun {
    figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    carries = Collections.unmodifiableMap(new LinkedHashMap<>(carries));
  }
}
