package sparewell.workbook.read;

import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sparewell.workbook.InputColumn;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Words;

/** The first spelling of every name, in the order of the input sheets and their rows. */
final class Spellings {
  /**
   * What a name stands for; boxes and compartments share one set, since stock may lie in either.
   */
  enum Of {
    STYLE,
    FAMILY,
    SIZE,
    COLOUR,
    PLACE,
    TRIP,
    EVENT,
    COVER
  }

  private final Map<Of, Map<String, String>> first = new EnumMap<>(Of.class);
  private final Map<Of, Set<String>> met = new EnumMap<>(Of.class);
  private final Map<Of, Map<String, String>> shown = new EnumMap<>(Of.class);

  private Spellings() {
    for (Of what : Of.values()) {
      met.put(what, new HashSet<>());
      shown.put(what, new HashMap<>());
    }
  }

  static Spellings of(Collection<InputTable> tablesInOrder) {
    Spellings spellings = new Spellings();
    for (InputTable table : tablesInOrder) {
      for (RawRow row : table.rows()) {
        for (BoundColumn bound : table.columns().values()) {
          Optional<Of> what = named(bound.column());
          if (what.isPresent()) {
            row.at(bound.index())
                .map(c -> what.get() == Of.SIZE ? Words.size(c) : Words.text(c))
                .filter(text -> !text.isEmpty())
                .ifPresent(text -> spellings.meet(what.get(), text));
          }
        }
      }
    }
    return spellings;
  }

  private static Optional<Of> named(InputColumn column) {
    return switch (column.name()) {
      case "Style" -> Optional.of(Of.STYLE);
      case "Family" -> Optional.of(Of.FAMILY);
      case "Size" -> Optional.of(Of.SIZE);
      case "Colour" -> Optional.of(Of.COLOUR);
      case "Box", "From box", "To box", "Compartment" -> Optional.of(Of.PLACE);
      case "Trip" -> Optional.of(Of.TRIP);
      case "Event" -> Optional.of(Of.EVENT);
      case "Cover" -> Optional.of(Of.COVER);
      default -> Optional.empty();
    };
  }

  private void meet(Of what, String text) {
    if (!met.get(what).add(text)) {
      return; // the same spelling again
    }
    first.computeIfAbsent(what, w -> new HashMap<>()).putIfAbsent(Names.fold(text), text);
  }

  /** The spelling shown for a name. */
  String shown(Of what, String text) {
    return shown
        .get(what)
        .computeIfAbsent(
            text, t -> first.getOrDefault(what, Map.of()).getOrDefault(Names.fold(t), t));
  }
}
