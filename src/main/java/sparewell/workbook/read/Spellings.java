package sparewell.workbook.read;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Words;

/** First spelling of every name, in the order of the input sheets and their rows. */
final class Spellings {
  /** Columns whose names share their spellings, since stock may lie in a box or a compartment. */
  private static final Set<String> PLACES = Set.of("Box", "From box", "To box", "Compartment");

  private static final Set<String> OTHERS =
      Set.of("Style", "Family", "Size", "Colour", "Trip", "Event", "Cover");

  private final Map<String, Map<String, String>> first = new HashMap<>();
  private final Map<String, String> folded = new HashMap<>(); // the same texts come again and again

  private Spellings() {}

  static Spellings of(Collection<InputTable> tablesInOrder) {
    Spellings spellings = new Spellings();
    for (InputTable table : tablesInOrder) {
      for (RawRow row : table.rows()) {
        for (BoundColumn bound : table.columns().values()) {
          String column = bound.column().name();
          if (PLACES.contains(column) || OTHERS.contains(column)) {
            row.at(bound.index())
                .map(cell -> column.equals("Size") ? Words.size(cell) : Words.text(cell))
                .filter(text -> !text.isEmpty())
                .ifPresent(text -> spellings.meet(column, text));
          }
        }
      }
    }
    return spellings;
  }

  private static String kind(String column) {
    return PLACES.contains(column) ? "Box" : column;
  }

  private void meet(String column, String text) {
    first
        .computeIfAbsent(kind(column), kind -> new HashMap<>())
        .putIfAbsent(folded.computeIfAbsent(text, Names::fold), text);
  }

  String shown(String column, String text) {
    return first
        .getOrDefault(kind(column), Map.of())
        .getOrDefault(folded.computeIfAbsent(text, Names::fold), text);
  }
}
