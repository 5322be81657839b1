package sparewell.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Restock;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;

/** Rules for styles and their stock. */
final class StockRules {
  private StockRules() {}

  /** Styles without stock, boxes without contents, compartments aboard with neither. */
  static void presence(Season season, Findings findings) {
    Set<String> styles = new HashSet<>();
    Set<String> boxes = new HashSet<>();
    Set<String> compartments = new HashSet<>();
    season.boxes().forEach(box -> compartments.add(box.compartment()));
    for (StockRow row : season.stock()) {
      styles.add(row.item().style());
      boxes.add(row.place().box());
      compartments.add(row.place().compartment());
    }
    for (Restock restock : season.restocks()) {
      styles.add(restock.item().style());
      boxes.add(restock.place().box());
      compartments.add(restock.place().compartment());
    }
    season.styles().stream()
        .filter(style -> !styles.contains(style.name()))
        .forEach(s -> findings.add(Code.STYLE_WITHOUT_STOCK, s.origin().under("Style"), s.name()));
    season.boxes().stream()
        .filter(box -> !boxes.contains(box.name()))
        .forEach(b -> findings.add(Code.BOX_WITHOUT_STOCK, b.origin().under("Box"), b.name()));
    season.compartments().stream()
        .filter(c -> !c.ashore() && !compartments.contains(c.name()))
        .forEach(
            c -> findings.add(Code.COMPARTMENT_EMPTY, c.origin().under("Compartment"), c.name()));
  }

  /** Items whose stock rows differ in Carry at least. */
  static void floorsAgree(Season season, Findings findings) {
    Map<ItemId, SortedSet<Integer>> floors = new HashMap<>();
    Map<ItemId, Cell> first = new LinkedHashMap<>();
    for (StockRow row : season.stock()) {
      if (row.carryAtLeast().isPresent()) {
        floors
            .computeIfAbsent(row.item(), item -> new TreeSet<>())
            .add(row.carryAtLeast().getAsInt());
        first.putIfAbsent(row.item(), row.origin().under("Carry at least"));
      }
    }
    first.forEach(
        (item, at) -> {
          if (floors.get(item).size() > 1) {
            findings.add(Code.FLOORS_DIFFER, at, item.spoken(), floors.get(item).last());
          }
        });
  }

  /** Gear of which more is kept than is needed at once, since nobody said how much to carry. */
  static void gearFloors(Season season, Findings findings) {
    int floor = season.settings().carryAtLeast();
    Map<String, Boolean> told =
        season.stock().stream()
            .collect(
                Collectors.toMap(
                    row -> row.item().style(),
                    row -> row.carryAtLeast().isPresent(),
                    Boolean::logicalOr));
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
}
