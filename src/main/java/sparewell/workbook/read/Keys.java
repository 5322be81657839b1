package sparewell.workbook.read;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/** Names that a sheet defines, found whatever their case, blanks and punctuation. */
final class Keys {
  private record Known(String name, Cell origin) {}

  final String where;
  private final Map<String, Known> known = new LinkedHashMap<>();
  private final Map<String, String> folded = new HashMap<>(); // the same texts come again and again
  private final Map<String, Cell> leftOut = new LinkedHashMap<>();

  /** {@code where} says in findings where the names stand. */
  Keys(String where) {
    this.where = where;
  }

  void add(String name, Cell origin) {
    known.putIfAbsent(Names.fold(name), new Known(name, origin));
  }

  void leaveOut(String name, Cell origin) {
    leftOut.putIfAbsent(Names.fold(name), origin);
  }

  Optional<String> find(String text) {
    return Optional.ofNullable(known.get(folded.computeIfAbsent(text, Names::fold)))
        .map(Known::name);
  }

  Optional<Cell> origin(String text) {
    return Optional.ofNullable(known.get(Names.fold(text))).map(Known::origin);
  }

  Optional<Cell> leftOut(String text) {
    return Optional.ofNullable(leftOut.get(Names.fold(text)));
  }

  Optional<String> near(String text) {
    return NearMiss.of(Names.fold(text), known.keySet()).map(near -> known.get(near).name());
  }
}
