package sparewell.check;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.StockRow;

/** Items whose stock rows differ in Carry at least. */
final class FloorsAgree implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    Map<ItemId, SortedSet<Integer>> floors = new HashMap<>();
    Map<ItemId, StockRow> first = new LinkedHashMap<>();
    for (StockRow row : season.stock()) {
      if (row.carryAtLeast().isPresent()) {
        floors
            .computeIfAbsent(row.item(), item -> new TreeSet<>())
            .add(row.carryAtLeast().getAsInt());
        first.putIfAbsent(row.item(), row);
      }
    }
    first.forEach(
        (item, row) -> {
          if (floors.get(item).size() > 1) {
            findings.add(
                Code.FLOORS_DIFFER,
                row.origin().under("Carry at least"),
                item.spoken(),
                floors.get(item).last());
          }
        });
  }
}
