package sparewell.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import sparewell.declared.DeclaredTable;
import sparewell.season.ItemId;
import sparewell.table.Column;
import sparewell.table.Format;

/**
 * Columns of one table as {@code columns.txt} declares them: name in CSV, heading, format, note on
 * the heading.
 *
 * @param <R> the row type
 */
final class Columns<R> {
  private static final Map<String, Map<String, List<String>>> DECLARED = read("columns.txt");

  private final String table;

  private Columns(String table) {
    this.table = table;
  }

  /** Columns of a table, by its name in square brackets. */
  static <R> Columns<R> of(String table) {
    return new Columns<>(table);
  }

  /**
   * A column with the values of its rows.
   *
   * @param name its name in CSV, or its heading where only the sheet has it
   */
  Column<R> column(String name, Function<R, ?> value) {
    return column(name, value, true);
  }

  /** The same, in the file alone unless {@code onSheet}. */
  Column<R> column(String name, Function<R, ?> value, boolean onSheet) {
    List<String> declared = DECLARED.get(table).get(name);
    if (declared == null) {
      throw new IllegalArgumentException("no column '" + name + "' of " + table);
    }
    String[] format = declared.get(2).split(" ");
    Format shown = Format.valueOf(format[0].toUpperCase(Locale.ROOT));
    Column<R> column =
        onSheet
            ? shown.column(declared.get(0), declared.get(1), declared.get(3), value)
            : shown.inFile(name, value);
    for (int i = 1; i < format.length; i++) {
      column = format[i].equals("sum") ? column.summed() : column.quiet();
    }
    return column;
  }

  /** Style, size and colour of a row's item, between the columns before and behind them. */
  @SafeVarargs
  static <R> List<Column<R>> among(
      List<Column<R>> before, Function<R, ItemId> item, Column<R>... behind) {
    Columns<R> items = of("Items");
    List<Column<R>> all = new ArrayList<>(before);
    all.add(items.column("style", row -> item.apply(row).style()));
    all.add(items.column("size", row -> item.apply(row).size()));
    all.add(items.column("colour", row -> item.apply(row).colour()));
    for (Column<R> column : behind) {
      all.add(column);
    }
    return all;
  }

  /** Each line's fields, by the name of its table and its own. */
  private static Map<String, Map<String, List<String>>> read(String file) {
    Map<String, Map<String, List<String>>> tables = new HashMap<>();
    for (DeclaredTable table : DeclaredTable.read(Columns.class, file)) {
      Map<String, List<String>> columns = new HashMap<>();
      table.rows().forEach(row -> columns.put(row.get(row.get(0).isEmpty() ? 1 : 0), row));
      tables.put(table.name(), columns);
    }
    return tables;
  }
}
