package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import sparewell.table.Column;

/** The column that tells which weights are 'at least'; it stands only where some are. */
final class WeightKnown {
  private WeightKnown() {}

  /** The columns, with that one behind them where a row needs it. */
  static <R> List<Column<R>> shown(List<Column<R>> columns, List<R> rows, Predicate<R> known) {
    if (rows.stream().allMatch(known)) {
      return columns;
    }
    List<Column<R>> shown = new ArrayList<>(columns);
    shown.add(
        Columns.<R>of("Weights")
            .column("Weight is", row -> known.test(row) ? "known" : "at least"));
    return shown;
  }
}
