package sparewell.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Puts what the angler typed and has not posted yet back into the new tables. */
final class EntryFill {
  private final UnitSystem units;
  private final Map<Place, Typed.Row> waiting = new LinkedHashMap<>();
  private final Map<EntryTable, Map<List<String>, Integer>> seen = new HashMap<>();

  /** A row as it is known again: by its table, its key, and its place among rows of that key. */
  private record Place(EntryTable table, List<String> key, int nth) {}

  EntryFill(Typed typed, UnitSystem units) {
    this.units = units;
    for (Typed.Row row : typed.rows()) {
      waiting.put(new Place(row.table(), folded(row.key()), row.nth()), row);
    }
  }

  /** Entries that no table so far had a row for. */
  List<Typed.Row> left() {
    return waiting.values().stream().filter(row -> !row.entries().isEmpty()).toList();
  }

  ReportSheet fill(ReportSheet sheet) {
    if (waiting.isEmpty()) {
      return sheet;
    }
    List<Block> blocks = sheet.blocks().stream().map(block -> filled(sheet.name(), block)).toList();
    return new ReportSheet(sheet.name(), sheet.answer(), blocks, sheet.largePrint());
  }

  private Block filled(String sheet, Block block) {
    Optional<EntryTable> kind =
        block instanceof Block.Rows rows ? of(sheet, rows.table()) : Optional.empty();
    return kind.isPresent() && block instanceof Block.Rows rows
        ? new Block.Rows(fill(kind.get(), rows.table()), rows.about(), rows.printed())
        : block;
  }

  static Optional<EntryTable> of(String sheet, Table<?> table) {
    List<String> headings = table.columns().stream().map(Column::heading).toList();
    return List.of(EntryTable.values()).stream()
        .filter(kind -> kind.sheet().equals(sheet) && headings.containsAll(kind.headings()))
        .findFirst();
  }

  private <R> Table<R> fill(EntryTable kind, Table<R> table) {
    Map<R, Typed.Row> typed = new IdentityHashMap<>();
    for (R row : table.rows()) {
      List<String> key =
          folded(kind.keys().stream().map(heading -> text(table, heading, row)).toList());
      int nth = seen.computeIfAbsent(kind, k -> new HashMap<>()).merge(key, 1, Integer::sum) - 1;
      Optional.ofNullable(waiting.remove(new Place(kind, key, nth)))
          .ifPresent(there -> typed.put(row, there));
    }
    List<Column<R>> columns = new ArrayList<>();
    for (Column<R> column : table.columns()) {
      columns.add(
          kind.entries().contains(column.heading()) || column.heading().equals(EntryTable.INTO)
              ? column.valued(
                  row ->
                      Optional.ofNullable(typed.get(row))
                          .flatMap(there -> kept(kind, there, column, table, row))
                          .or(() -> column.format().shown(column.value().apply(row), units)))
              : column);
    }
    return new Table<>(table.csvFile(), table.title(), columns, table.rows(), table.whenEmpty());
  }

  /** The entry as typed; yes to another count than the row has now is that count. */
  private <R> Optional<Object> kept(
      EntryTable kind, Typed.Row typed, Column<R> column, Table<R> table, R row) {
    boolean open = column.entry().apply(row).isPresent();
    if (column.heading().equals(EntryTable.INTO)) {
      return Optional.ofNullable(typed.shown().get(EntryTable.INTO))
          .filter(place -> typed.ticked() || open)
          .filter(place -> !place.equals(EntryTable.OF_CHOICE));
    }
    Object entry = typed.entries().get(column.heading());
    if (!open) {
      return Optional.empty();
    }
    if (entry == null || kind.count().isEmpty() || !Ticks.isYes(entry)) {
      return Optional.ofNullable(entry);
    }
    Object then = typed.shown().get(kind.count().get());
    String now = text(table, kind.count().get(), row);
    return Optional.of(then == null || Ticks.plain(then).equals(now) ? entry : then);
  }

  private <R> String text(Table<R> table, String heading, R row) {
    return table.shown(row, heading, units).map(Ticks::plain).orElse("");
  }

  private static List<String> folded(List<String> key) {
    return key.stream().map(Ticks::fold).toList();
  }
}
