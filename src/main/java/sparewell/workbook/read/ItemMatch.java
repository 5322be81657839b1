package sparewell.workbook.read;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/**
 * Finds the item in stock that a row means. A row without size or colour means the only item that
 * fits; where several or none fit, its item is kept as written.
 */
final class ItemMatch {
  private final ItemsReader items;
  private final Findings findings;
  private final Map<List<String>, Map<String, String>> parts = new HashMap<>();
  private final Map<ItemId, Vague> onlyOne = new LinkedHashMap<>();
  private final Map<String, Vague> several = new LinkedHashMap<>();

  private static final class Vague {
    private final Cell first;
    private int pieces;

    Vague(Cell first) {
      this.first = first;
    }
  }

  ItemMatch(ItemsReader items, Findings findings) {
    this.items = items;
    this.findings = findings;
  }

  /** Item lost; {@code pieces} are counted for the notes. */
  ItemId lost(Row row, ItemId named, int pieces) {
    Set<ItemId> stock = items.of(named.style());
    if (stock.isEmpty() || stock.contains(named)) {
      return named;
    }
    List<ItemId> meant = candidates(stock, named);
    if (meant.size() == 1) {
      onlyOne.computeIfAbsent(meant.get(0), i -> new Vague(row.at("Style"))).pieces += pieces;
      return meant.get(0);
    }
    if (meant.isEmpty()) {
      nearMisses(row, named, stock);
      row.say(unknownPart(named, stock), Code.ITEM_NOT_IN_STOCK, named.spoken(), named.style());
    } else {
      several.computeIfAbsent(named.style(), s -> new Vague(row.at("Style"))).pieces += pieces;
    }
    return named;
  }

  /** The item restocked; an item not in stock is a new one. */
  ItemId restocked(Row row, ItemId named) {
    Set<ItemId> stock = items.of(named.style());
    if (stock.isEmpty() || stock.contains(named)) {
      return named;
    }
    List<ItemId> meant = candidates(stock, named);
    if (meant.isEmpty()) {
      nearMisses(row, named, stock);
    }
    return meant.size() == 1 ? meant.get(0) : named;
  }

  private static List<ItemId> candidates(Set<ItemId> stock, ItemId named) {
    if (!named.size().isEmpty() && !named.colour().isEmpty()) {
      return List.of();
    }
    return stock.stream()
        .filter(item -> named.size().isEmpty() || named.size().equals(item.size()))
        .filter(item -> named.colour().isEmpty() || named.colour().equals(item.colour()))
        .toList();
  }

  /** The column of the part that no item of the style has; of its colour where only both do not. */
  private static String unknownPart(ItemId named, Set<ItemId> stock) {
    boolean sizeKnown = stock.stream().anyMatch(item -> item.size().equals(named.size()));
    return named.colour().isEmpty() || !(sizeKnown || named.size().isEmpty()) ? "Size" : "Colour";
  }

  private void nearMisses(Row row, ItemId named, Set<ItemId> stock) {
    nearMiss(row, "Size", named.style(), named.size(), stock, ItemId::size);
    nearMiss(row, "Colour", named.style(), named.colour(), stock, ItemId::colour);
  }

  private void nearMiss(
      Row row,
      String column,
      String style,
      String text,
      Set<ItemId> stock,
      Function<ItemId, String> part) {
    if (text.isEmpty()) {
      return;
    }
    Map<String, String> known =
        parts.computeIfAbsent(List.of(style, column), k -> byFolded(stock, part));
    String folded = Names.fold(text);
    if (!known.containsKey(folded)) {
      NearMiss.of(folded, known.keySet())
          .ifPresent(
              near -> row.sayDidYouMean(column, text, "kept as it is written", known.get(near)));
    }
  }

  private static Map<String, String> byFolded(Set<ItemId> stock, Function<ItemId, String> part) {
    return stock.stream()
        .map(part)
        .filter(name -> !name.isEmpty())
        .collect(Collectors.toMap(Names::fold, n -> n, (a, b) -> a, LinkedHashMap::new));
  }

  void conclude() {
    onlyOne.forEach(
        (item, vague) ->
            findings.add(Code.ONLY_ITEM, vague.first, vague.pieces, item.style(), item.spoken()));
    several.forEach(
        (style, vague) -> findings.add(Code.ITEM_PARTLY_NAMED, vague.first, vague.pieces, style));
  }
}
