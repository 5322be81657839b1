package sparewell.workbook.read;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/**
 * A row taken for the header of a sheet.
 *
 * @param row its number
 * @param columns the declared columns found, by name
 * @param twice further columns with a header that was met before
 * @param missing required columns not found, each with the header that was perhaps meant
 */
public record HeaderRow(
    int row, Map<String, BoundColumn> columns, List<BoundColumn> twice, List<String> missing) {
  public HeaderRow {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    twice = List.copyOf(twice);
    missing = List.copyOf(missing);
  }

  /** Reads a row as if it were the header. */
  public static HeaderRow of(InputSheet sheet, RawRow raw) {
    Map<String, BoundColumn> columns = new LinkedHashMap<>();
    List<BoundColumn> twice = new ArrayList<>();
    List<String> others = new ArrayList<>();
    for (RawCell cell : raw.cells()) {
      if (cell.kind() != RawCell.Kind.TEXT) {
        continue;
      }
      String header = Names.clean(cell.text());
      Optional<BoundColumn> bound = BoundColumn.of(sheet.columns(), cell.column(), header);
      if (bound.isEmpty()) {
        others.add(header);
      } else if (columns.putIfAbsent(bound.get().column().name(), bound.get()) != null) {
        twice.add(bound.get());
      }
    }
    List<String> missing = new ArrayList<>();
    for (InputColumn column : sheet.columns()) {
      if (column.required() && !columns.containsKey(column.name())) {
        missing.add(column.name() + meant(column, others));
      }
    }
    return new HeaderRow(raw.number(), columns, twice, missing);
  }

  private static String meant(InputColumn column, List<String> others) {
    String wanted = Names.fold(column.name());
    return others.stream()
        .filter(other -> NearMiss.of(Names.fold(other), List.of(wanted)).isPresent())
        .findFirst()
        .map(other -> " (is '" + other + "' meant?)")
        .orElse("");
  }

  /** Whether it holds every required column. */
  public boolean complete() {
    return missing.isEmpty();
  }
}
