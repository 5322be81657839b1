package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import sparewell.declared.DeclaredTable;
import sparewell.season.ItemId;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Table;

/**
 * Columns of one table as {@code columns.txt} declares them: name in CSV, heading, format, note on
 * the heading; and its own file, title and words where it has no rows.
 *
 * @param <R> the row type
 */
final class Columns<R> {
  private static final Map<String, DeclaredTable> TABLES =
      DeclaredTable.read(Columns.class, "columns.txt");
  private static final Map<String, DeclaredTable> TEXTS =
      DeclaredTable.read(Columns.class, "texts.txt");

  private final DeclaredTable declared;
  private final Map<String, List<String>> byName;

  private Columns(DeclaredTable declared) {
    this.declared = declared;
    this.byName = declared.byName();
  }

  static Map<String, List<String>> texts(String table) {
    return TEXTS.get(table).byName();
  }

  /** Lines of one table of {@code texts.txt}, in order, their first fields alone. */
  static List<String> lines(String table) {
    return TEXTS.get(table).rows().stream().map(row -> row.get(0)).toList();
  }

  static <R> Columns<R> of(String table) {
    return new Columns<>(TABLES.get(table));
  }

  /** A column; {@code name} is its name in CSV, or its heading where only the sheet has it. */
  Column<R> column(String name, Function<R, ?> value) {
    return column(name, value, true);
  }

  /** The same, unless {@code onSheet} in the file alone, if there. */
  Column<R> column(String name, Function<R, ?> value, boolean onSheet) {
    List<String> line = byName.get(name);
    if (line == null) {
      throw new IllegalArgumentException("no column '" + name + "' of " + declared.name());
    }
    String[] format = line.get(2).split(" ");
    Format shown = Format.valueOf(format[0].toUpperCase(Locale.ROOT));
    Column<R> column =
        onSheet
            ? shown.column(line.get(0), line.get(1), line.get(3), value)
            : shown.inFile(line.get(0), value);
    for (int i = 1; i < format.length; i++) {
      column = format[i].equals("sum") ? column.summed() : column.quiet();
    }
    return column;
  }

  /** The table; {@code inTitle} fills the places of its title. */
  Table<R> table(List<R> rows, List<Column<R>> columns, Object... inTitle) {
    String[] head = declared.title().split(" *\\| ?", -1);
    return new Table<>(head[0], Phrase.text(head[1], inTitle), columns, rows, head[2]);
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

  /** The columns of weights, and where some row's weight is not known, one that tells which. */
  static <R> List<Column<R>> withKnown(List<Column<R>> columns, List<R> rows, Predicate<R> known) {
    List<Column<R>> shown = new ArrayList<>(columns);
    if (!rows.stream().allMatch(known)) {
      Columns<R> weights = of("Weights");
      shown.add(weights.column("Weight is", row -> known.test(row) ? "known" : "at least"));
    }
    return shown;
  }
}
