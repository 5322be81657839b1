package sparewell.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import sparewell.finding.Cell;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Ticks;
import sparewell.sheet.Typed;
import sparewell.table.Table;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/**
 * The lines of our tables on one sheet, found by their headings, wherever other programs have put
 * them: with rows and columns inserted, sorted, the headings along with them or not, filtered. What
 * stands in a column to type into, but beside no line, is a stray.
 */
final class TypedLines {
  /** The unit behind a heading. */
  private static final Pattern UNIT = Pattern.compile(" *\\([^)]*\\)$");

  private static final Pattern NO_LETTERS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern DIGIT = Pattern.compile("\\d");

  private static final int HEADING = 3;

  /** The headings that programs read, by how they are compared. */
  private static final Map<String, String> KNOWN = known();

  /** A heading found: of which table, and the column of each heading; whole if none is missing. */
  private record Head(EntryTable kind, Map<String, Integer> columns, boolean whole) {}

  private final String tab;
  private final List<EntryTable> tables;
  private final List<RawRow> rows;
  private final List<Typed.Row> lines = new ArrayList<>();
  private final List<Typed.Stray> strays = new ArrayList<>();
  private final Map<EntryTable, Map<List<String>, Integer>> seen = new HashMap<>();
  private final Map<EntryTable, Set<List<String>>> keys = new HashMap<>();
  private final Map<RawRow, Head> heads = new IdentityHashMap<>();
  private final Set<RawRow> taken = Collections.newSetFromMap(new IdentityHashMap<>());

  private TypedLines(String tab, List<EntryTable> tables, List<RawRow> rows) {
    this.tab = tab;
    this.tables = tables;
    this.rows = rows;
  }

  static TypedLines of(String tab, List<EntryTable> tables, List<RawRow> rows) {
    TypedLines found = new TypedLines(tab, tables, rows);
    Optional<Head> open = Optional.empty();
    found.findHeads();
    for (int i = 0; i < rows.size(); i++) {
      if (found.heads.containsKey(rows.get(i))) {
        found.above(found.heads.get(rows.get(i)), i);
      }
    }
    for (RawRow row : rows) {
      Optional<Head> begun = Optional.ofNullable(found.heads.get(row));
      if (begun.isPresent()) {
        open = begun;
      } else if (open.isPresent() && ends(open.get(), row)) {
        open = Optional.empty();
      } else if (open.isPresent() && !found.taken.contains(row)) {
        found.below(open.get(), row);
      }
    }
    return found;
  }

  List<Typed.Row> lines() {
    return lines;
  }

  /** The keys of all lines of a table, with or without anything typed, from the top down. */
  List<List<String>> keys(EntryTable kind) {
    return List.copyOf(keys.getOrDefault(kind, Set.of()));
  }

  List<Typed.Stray> strays() {
    return strays;
  }

  private void findHeads() {
    Head last = null;
    for (RawRow row : rows) {
      // Where a box is called Box and its tick is typed as done, a line reads like a heading.
      boolean line = last != null && figure(last, row).isPresent() && fits(last, row);
      Optional<Head> head = line ? Optional.empty() : head(row);
      head.ifPresent(its -> heads.put(row, its));
      last = head.orElse(last);
    }
  }

  private Optional<Head> head(RawRow row) {
    Map<String, Integer> texts = new LinkedHashMap<>();
    for (RawCell cell : row.cells()) {
      if (cell.kind() == RawCell.Kind.TEXT) {
        String text = UNIT.matcher(cell.text().strip()).replaceFirst("");
        texts.putIfAbsent(KNOWN.getOrDefault(folded(text), text), cell.column());
      }
    }
    Set<String> there = texts.keySet();
    Optional<EntryTable> whole =
        tables.stream().filter(kind -> there.containsAll(kind.headings())).findFirst();
    if (whole.isPresent()) {
      return Optional.of(new Head(whole.get(), texts, true));
    }
    return tables.stream()
        .filter(kind -> there.contains(kind.naming()))
        .filter(kind -> kind.entries().stream().anyMatch(there::contains))
        .findFirst()
        .map(kind -> new Head(kind, texts, false));
  }

  /**
   * Lines that were sorted to above their heading: no gap is between, and a title or the top of the
   * sheet is above. Under another heading they are lines of that table, whatever table it is.
   */
  private void above(Head head, int at) {
    int from = at;
    for (int i = at - 1; i >= 0 && !lone(rows.get(i)); i--) {
      RawRow row = rows.get(i);
      if (heads.containsKey(row) || ends(head, row)) {
        return;
      }
      if (i == from - 1 && row.number() == rows.get(from).number() - 1 && fits(head, row)) {
        from = i;
      }
    }
    rows.subList(from, at).forEach(row -> line(head, row));
  }

  private static boolean lone(RawRow row) {
    return row.cells().stream().filter(cell -> !cell.blank()).count() < 2;
  }

  private void below(Head head, RawRow row) {
    if (fits(head, row)) {
      line(head, row);
      return;
    }
    for (String heading : head.kind().entries()) {
      Optional.ofNullable(head.columns().get(heading))
          .flatMap(
              column ->
                  value(row, column)
                      .filter(there -> !(sums(row) && Ticks.isYes(there))) // drawn down too far
                      .map(
                          there ->
                              new Typed.Stray(
                                  new Cell(tab, row.number(), column), Ticks.plain(there))))
          .ifPresent(strays::add);
    }
  }

  /** Returns whether it is a line: it names its subject, and figures stand where they belong. */
  private static boolean fits(Head head, RawRow row) {
    return head.whole()
        && !sums(row)
        && value(row, head.columns().get(head.kind().naming())).isPresent()
        && figure(head, row).filter(there -> !isFigure(there)).isEmpty();
  }

  private static boolean isFigure(String there) {
    return DIGIT.matcher(there).find() || there.equals(EntryTable.NEVER);
  }

  private static boolean sums(RawRow row) {
    return row.cells().get(0).text().equals(Table.TOTAL);
  }

  private static Optional<String> figure(Head head, RawRow row) {
    return head.kind()
        .figure()
        .map(head.columns()::get)
        .flatMap(column -> value(row, column))
        .map(Object::toString);
  }

  /** Returns whether it is another table's heading: words, one of them where figures belong. */
  private static boolean ends(Head head, RawRow row) {
    return row.cells().size() >= HEADING
        && row.cells().stream()
            .allMatch(
                cell -> cell.kind() == RawCell.Kind.TEXT && !DIGIT.matcher(cell.text()).find())
        && figure(head, row).filter(there -> !isFigure(there)).isPresent();
  }

  private void line(Head head, RawRow row) {
    taken.add(row);
    EntryTable kind = head.kind();
    Map<String, Object> shown = new LinkedHashMap<>();
    head.columns()
        .forEach(
            (heading, column) -> value(row, column).ifPresent(there -> shown.put(heading, there)));
    List<String> key =
        kind.keys().stream()
            .map(heading -> Optional.ofNullable(shown.get(heading)).map(Ticks::plain).orElse(""))
            .toList();
    int nth = seen.computeIfAbsent(kind, k -> new HashMap<>()).merge(key, 1, Integer::sum) - 1;
    if (shown.size() > 1) { // the title of a table is a lone text
      keys.computeIfAbsent(kind, k -> new LinkedHashSet<>()).add(key);
    }
    Map<String, Object> entries = new LinkedHashMap<>(shown);
    entries.keySet().retainAll(kind.entries());
    Optional<String> first =
        entries.keySet().stream()
            .findFirst()
            .or(() -> Optional.of(EntryTable.INTO).filter(shown::containsKey));
    if (first.isPresent()) {
      int column = head.columns().get(first.get());
      lines.add(new Typed.Row(kind, key, nth, shown, entries, new Cell(tab, row.number(), column)));
    }
  }

  private static Map<String, String> known() {
    Map<String, String> known = new HashMap<>();
    for (EntryTable kind : EntryTable.values()) {
      kind.headings().forEach(heading -> known.put(folded(heading), heading));
    }
    for (String heading : List.of(EntryTable.INTO, "Pieces", "Cost")) {
      known.put(folded(heading), heading);
    }
    return known;
  }

  /** Headings are compared by their letters and digits. */
  private static String folded(String heading) {
    return NO_LETTERS.matcher(heading.toLowerCase(Locale.ROOT)).replaceAll("");
  }

  /** A cell's value: a text, a number, a date or yes or no; empty where it is blank. */
  static Optional<Object> value(RawRow row, int column) {
    return row.at(column).filter(cell -> !cell.blank()).flatMap(TypedLines::value);
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
