package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import sparewell.season.ItemId;
import sparewell.table.Column;
import sparewell.table.Format;

/** The columns of tables whose rows are each about one item. */
final class ItemColumns {
  private ItemColumns() {}

  /** Style, size and colour of a row's item, between the columns before and behind them. */
  @SafeVarargs
  static <R> List<Column<R>> among(
      List<Column<R>> before, Function<R, ItemId> item, Column<R>... behind) {
    List<Column<R>> all = new ArrayList<>(before);
    all.add(Format.TEXT.column("style", "Style", "Style.", row -> item.apply(row).style()));
    all.add(Format.TEXT.column("size", "Size", "Size.", row -> item.apply(row).size()));
    all.add(Format.TEXT.column("colour", "Colour", "Colour.", row -> item.apply(row).colour()));
    for (Column<R> column : behind) {
      all.add(column);
    }
    return all;
  }
}
