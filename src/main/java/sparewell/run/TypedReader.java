package sparewell.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import sparewell.finding.Cell;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.OwnSheetNames;
import sparewell.sheet.EntryTable;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.Ticks;
import sparewell.sheet.TripCardSheet;
import sparewell.sheet.Typed;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/** Reads what the angler typed into our own sheets; a copy of one is his, and is not read. */
final class TypedReader implements Consumer<RawRow> {
  /** The unit behind a heading. */
  private static final Pattern UNIT = Pattern.compile(" \\([^)]*\\)$");

  private final String tab;
  private final List<EntryTable> tables;
  private final boolean card;
  private final List<Typed.Row> rows;
  private final Map<String, Object> fields;
  private final Map<EntryTable, Map<List<String>, Integer>> seen = new HashMap<>();
  private Optional<EntryTable> table = Optional.empty();
  private Map<String, Integer> columns = Map.of();
  private int nextRow;

  private TypedReader(String tab, String name, List<Typed.Row> rows, Map<String, Object> fields) {
    this.tab = tab;
    this.tables =
        List.of(EntryTable.values()).stream().filter(t -> t.sheet().equals(name)).toList();
    this.card = name.equals(TripCardSheet.NAME);
    this.rows = rows;
    this.fields = fields;
  }

  static Typed of(WorkbookPackage book) throws WorkbookRefused {
    BookCells cells = BookCells.of(book);
    List<Typed.Row> rows = new ArrayList<>();
    Map<String, Object> fields = new LinkedHashMap<>();
    for (SheetEntry sheet : book.sheets()) {
      Optional<String> name =
          sheet.own() ? OwnSheetNames.wanted(sheet.name(), ReportSheets.names()) : Optional.empty();
      if (name.isPresent()) {
        cells.rows(sheet, new TypedReader(sheet.name(), name.get(), rows, fields));
      }
    }
    return new Typed(rows, fields);
  }

  @Override
  public void accept(RawRow row) {
    Map<String, Integer> texts = new LinkedHashMap<>();
    for (RawCell cell : row.cells()) {
      if (cell.kind() == RawCell.Kind.TEXT) {
        texts.putIfAbsent(UNIT.matcher(cell.text().strip()).replaceFirst(""), cell.column());
      }
    }
    Optional<EntryTable> begun =
        tables.stream().filter(t -> texts.keySet().containsAll(t.headings())).findFirst();
    if (begun.isPresent()) {
      table = begun;
      columns = texts;
      nextRow = row.number() + 1;
    } else if (table.isPresent()) {
      line(table.get(), row);
    }
    if (card) {
      field(row);
    }
  }

  private void line(EntryTable kind, RawRow row) {
    List<String> key =
        kind.keys().stream()
            .map(heading -> value(row, columns.get(heading)).map(Ticks::plain).orElse(""))
            .toList();
    if (row.number() != nextRow || key.stream().allMatch(String::isEmpty)) {
      table = Optional.empty(); // a blank row, or one of sums, ends a table
      return;
    }
    nextRow++;
    int nth = seen.computeIfAbsent(kind, k -> new HashMap<>()).merge(key, 1, Integer::sum) - 1;
    Map<String, Object> shown = new LinkedHashMap<>();
    columns.forEach(
        (heading, column) -> value(row, column).ifPresent(there -> shown.put(heading, there)));
    Map<String, Object> entries = new LinkedHashMap<>(shown);
    entries.keySet().retainAll(kind.entries());
    if (!entries.isEmpty()) {
      int column = columns.get(entries.keySet().iterator().next());
      rows.add(new Typed.Row(kind, key, nth, shown, entries, new Cell(tab, row.number(), column)));
    }
  }

  private void field(RawRow row) {
    value(row, 1)
        .map(Object::toString)
        .filter(TripCardSheet.FIELDS::contains)
        .ifPresent(label -> value(row, 2).ifPresent(there -> fields.putIfAbsent(label, there)));
  }

  /** A cell's value: a text, a number, a date or yes or no; empty where it is blank. */
  static Optional<Object> value(RawRow row, int column) {
    return row.at(column).filter(cell -> !cell.blank()).flatMap(TypedReader::value);
  }

  private static Optional<Object> value(RawCell cell) {
    return switch (cell.kind()) {
      case NUMBER -> Optional.of(cell.number());
      case DATE ->
          Optional.of(
              cell.text().isEmpty() ? (Object) cell.number() : LocalDate.parse(cell.text()));
      case TEXT -> Optional.of(cell.text().strip());
      case BOOLEAN -> Optional.of(Boolean.valueOf(cell.text().equalsIgnoreCase("true")));
      case ERROR, DAMAGED, UNCOMPUTED -> Optional.of(cell.text().isEmpty() ? "?" : cell.text());
    };
  }
}
