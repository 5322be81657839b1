package sparewell.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.StockRow;

/** Items whose stock rows give different floors. */
final class FloorsAgree implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    Map<ItemId, Integer> largest = new HashMap<>();
    Set<ItemId> differ = new HashSet<>();
    Map<ItemId, StockRow> first = new LinkedHashMap<>();
    for (StockRow row : season.stock()) {
      if (row.carryAtLeast().isPresent()) {
        int floor = row.carryAtLeast().getAsInt();
        Integer before =
            largest.put(row.item(), Math.max(floor, largest.getOrDefault(row.item(), 0)));
        if (before != null && before != floor) {
          differ.add(row.item());
        }
        first.putIfAbsent(row.item(), row);
      }
    }
    first.forEach(
        (item, row) -> {
          if (differ.contains(item)) {
            findings.add(
                Code.FLOORS_DIFFER,
                row.origin().under("Carry at least"),
                item.spoken(),
                largest.get(item));
          }
        });
  }
}
