package sparewell.workbook.read;

import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import sparewell.workbook.InputColumn;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Words;

/** First spelling of every name, in the order of the input sheets and their rows. */
final class Spellings {
  /** Kinds of name; boxes and compartments share one, since stock may lie in either. */
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
  private final Map<String, String> folded = new HashMap<>(); // the same texts come again and again

  private Spellings() {
    for (Of what : Of.values()) {
      first.put(what, new HashMap<>());
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
    first.get(what).putIfAbsent(folded.computeIfAbsent(text, Names::fold), text);
  }

  /** First spelling of a name. */
  String shown(Of what, String text) {
    return first.get(what).getOrDefault(folded.computeIfAbsent(text, Names::fold), text);
  }
}
