package sparewell.workbook.read;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/**
 * A row taken for the header of a sheet.
 *
 * @param columns the declared columns found, by name
 * @param twice further columns with a header that was met before
 * @param missing required columns not found, each with the header that was perhaps meant
 */
public record HeaderRow(
    int row, Map<String, BoundColumn> columns, List<BoundColumn> twice, List<String> missing) {
  public static HeaderRow of(InputSheet sheet, RawRow raw) {
    return of(sheet, false, raw);
  }

  public Optional<BoundColumn> column(String name) {
    return Optional.ofNullable(columns.get(name));
  }

  private static HeaderRow of(InputSheet sheet, boolean inFile, RawRow raw) {
    Map<String, BoundColumn> columns = new LinkedHashMap<>();
    List<BoundColumn> twice = new ArrayList<>();
    List<String> others = new ArrayList<>();
    for (RawCell cell : raw.cells()) {
      if (cell.kind() != RawCell.Kind.TEXT) {
        continue;
      }
      String header = Names.clean(cell.text());
      Optional<BoundColumn> bound = BoundColumn.of(sheet.columns(), inFile, cell.column(), header);
      if (bound.isEmpty()) {
        others.add(header);
      } else if (columns.putIfAbsent(bound.get().column().name(), bound.get()) != null) {
        twice.add(bound.get());
      }
    }
    return new HeaderRow(raw.number(), columns, twice, missing(sheet, columns, others));
  }

  /**
   * Reads a row of a file as if it were the header: where none has a column's own name, the first
   * with another name in use for it counts.
   */
  public static HeaderRow ofFile(InputSheet sheet, RawRow raw) {
    HeaderRow plain = of(sheet, raw);
    Map<String, BoundColumn> columns = new LinkedHashMap<>(plain.columns);
    Set<Integer> used = new HashSet<>();
    columns.values().forEach(bound -> used.add(bound.index()));
    of(sheet, true, raw).columns.values().stream()
        .filter(bound -> !columns.containsKey(bound.column().name()) && used.add(bound.index()))
        .forEach(bound -> columns.put(bound.column().name(), bound));
    List<String> others =
        raw.cells().stream()
            .filter(cell -> cell.kind() == RawCell.Kind.TEXT && !used.contains(cell.column()))
            .map(cell -> Names.clean(cell.text()))
            .toList();
    return new HeaderRow(raw.number(), columns, plain.twice, missing(sheet, columns, others));
  }

  private static List<String> missing(
      InputSheet sheet, Map<String, BoundColumn> columns, List<String> others) {
    return sheet.columns().stream()
        .filter(column -> column.required() && !columns.containsKey(column.name()))
        .map(column -> column.name() + meant(column, others))
        .toList();
  }

  private static String meant(InputColumn column, List<String> others) {
    String wanted = Names.fold(column.name());
    return others.stream()
        .filter(other -> NearMiss.of(Names.fold(other), List.of(wanted)).isPresent())
        .findFirst()
        .map(other -> " (is '" + other + "' meant?)")
        .orElse("");
  }

  public boolean complete() {
    return missing.isEmpty();
  }
}
