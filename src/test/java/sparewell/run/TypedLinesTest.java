package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.AnalysedDemo;
import sparewell.Ticking;
import sparewell.finding.Cell;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.sheet.EntryTable;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.Typed;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.NumberShape;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/** Every tick of the demo is found again, whatever other programs do to the sheets around it. */
class TypedLinesTest {
  private static final Map<String, List<RawRow>> SHEETS = new LinkedHashMap<>();

  @BeforeAll
  static void everythingIsTicked(@TempDir Path folder) throws Exception {
    Path book = AnalysedDemo.copy(folder);
    Ticking.edit(
        book,
        open -> {
          for (String sheet : List.of("Spares", "Buy list", "Event packing", "After trip")) {
            Ticking.type(open, sheet, "Done", line -> "yes");
          }
          Ticking.type(open, "Stow plan", "Done", line -> 1);
          Ticking.type(open, "Where it is", "Counted", line -> 5);
          Ticking.type(open, "Trip card", "Lost", line -> 2);
          Ticking.type(open, "Trip card", "Hours", line -> 1.5);
        });
    try (WorkbookPackage pack = WorkbookPackage.open(book)) {
      for (SheetEntry sheet : pack.sheets()) {
        if (sheet.own() && !EntryTable.of(sheet.name()).isEmpty()) {
          List<RawRow> rows = new ArrayList<>();
          BookCells.of(pack).rows(sheet, rows::add);
          SHEETS.put(sheet.name(), rows);
        }
      }
    }
    assertTrue(ReportSheets.names().containsAll(SHEETS.keySet()));
    assertEquals(7, SHEETS.size());
  }

  private static TypedLines read(String sheet, List<RawRow> rows) {
    return TypedLines.of(sheet, EntryTable.of(sheet), rows);
  }

  /** Entries by the line they were typed for, wherever they stand. */
  private static List<String> typed(String sheet, List<RawRow> rows) {
    return read(sheet, rows).lines().stream()
        .map(line -> line.table() + " " + line.key() + line.entries())
        .sorted()
        .toList();
  }

  private static void sameTicks(UnaryOperator<List<RawRow>> change) {
    int ticks = 0;
    for (Map.Entry<String, List<RawRow>> sheet : SHEETS.entrySet()) {
      List<String> before = typed(sheet.getKey(), sheet.getValue());
      List<RawRow> changed = change.apply(sheet.getValue());
      assertEquals(before, typed(sheet.getKey(), changed));
      assertEquals(List.of(), read(sheet.getKey(), changed).strays());
      ticks += before.size();
    }
    assertTrue(ticks > 400, ticks + " ticks");
  }

  private static RawCell moved(RawCell cell, int column) {
    return new RawCell(column, cell.kind(), cell.text(), cell.number(), cell.shape());
  }

  private static RawCell text(int column, String text) {
    return new RawCell(column, RawCell.Kind.TEXT, text, 0, NumberShape.GENERAL);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void blankRowsAndRowsOfNotesAreInserted(int seed) {
    Random dice = new Random(seed);
    sameTicks(
        rows -> {
          List<RawRow> grown = new ArrayList<>();
          int more = 0;
          for (RawRow row : rows) {
            if (dice.nextInt(4) == 0) {
              more++;
              if (dice.nextBoolean()) {
                grown.add(new RawRow(row.number() + more - 1, List.of(text(9, "ask first"))));
              }
            }
            grown.add(new RawRow(row.number() + more, row.cells()));
          }
          return grown;
        });
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 7})
  void aColumnIsInserted(int at) {
    sameTicks(
        rows ->
            rows.stream()
                .map(
                    row -> {
                      List<RawCell> cells = new ArrayList<>();
                      for (RawCell cell : row.cells()) {
                        cells.add(moved(cell, cell.column() + (cell.column() >= at ? 1 : 0)));
                      }
                      cells.add(text(40, "mine"));
                      return new RawRow(row.number(), cells);
                    })
                .toList());
  }

  /** Blocks of rows without a gap, each put in another order: all but the heading, or with it. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void tablesAreSorted(boolean headingToo) {
    sameTicks(
        rows -> {
          List<RawRow> sorted = new ArrayList<>();
          List<RawRow> block = new ArrayList<>();
          for (RawRow row : rows) {
            boolean table = row.cells().size() > 2 && !row.cells().get(0).text().equals("Total");
            if (!block.isEmpty()
                && (!table || row.number() > block.get(block.size() - 1).number() + 1)) {
              sorted.addAll(reversed(block, headingToo));
              block.clear();
            }
            (table ? block : sorted).add(row);
          }
          sorted.addAll(reversed(block, headingToo));
          return sorted;
        });
  }

  private static List<RawRow> reversed(List<RawRow> block, boolean headingToo) {
    List<List<RawCell>> cells = new ArrayList<>(block.stream().map(RawRow::cells).toList());
    if (!cells.isEmpty()) {
      boolean ours =
          cells.get(0).stream()
              .anyMatch(cell -> List.of("Done", "Counted", "Lost", "Hours").contains(cell.text()));
      Collections.reverse(headingToo && ours ? cells : cells.subList(1, cells.size()));
    }
    List<RawRow> rows = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      rows.add(new RawRow(block.get(i).number(), cells.get(i)));
    }
    return rows;
  }

  @Test
  void headingsMayBeTypedAnew() {
    sameTicks(
        rows ->
            rows.stream()
                .map(
                    row ->
                        new RawRow(
                            row.number(),
                            row.cells().stream()
                                .map(
                                    cell ->
                                        Stream.of("Done", "Counted", "Style", "Pieces", "Box")
                                                .anyMatch(cell.text()::equals)
                                            ? text(
                                                cell.column(),
                                                cell.text().toUpperCase(java.util.Locale.ROOT)
                                                    + " ?")
                                            : cell)
                                .toList()))
                .toList());
  }

  /** The rows between tables are deleted, and a blank row stands among the lines of one. */
  @Test
  void linesRightAboveAnotherHeadingAreOfTheirOwnTable() {
    sameTicks(
        rows -> {
          if (rows.stream().noneMatch(row -> row.cells().get(0).text().equals("Style"))) {
            return rows; // steps to do are no table
          }
          List<RawRow> closed = new ArrayList<>();
          int number = 1;
          for (RawRow row : rows) {
            boolean table = row.cells().size() > 2 && !row.cells().get(0).text().equals("Total");
            if (table || row.number() < 12) {
              number += number == 30 ? 2 : 1;
              closed.add(new RawRow(number, row.cells()));
            }
          }
          return closed;
        });
  }

  private static RawRow row(int number, String... texts) {
    List<RawCell> cells = new ArrayList<>();
    for (int i = 0; i < texts.length; i++) {
      cells.add(text(i + 1, texts[i]));
    }
    return new RawRow(number, cells);
  }

  @Test
  void boxesNeverCheckedAndABoxCalledBoxAreTicked() {
    List<RawRow> rows =
        List.of(
            row(1, "Box", "Where", "Due on", "Done"),
            row(2, "Alpha", "Bow", EntryTable.NEVER, "yes"),
            row(3, "Box", "Bow", EntryTable.NEVER, "done"),
            row(4, "Beta", "Bow", "2026-03-01", "yes"));
    assertEquals(
        List.of(List.of("Alpha"), List.of("Box"), List.of("Beta")),
        read("After trip", rows).lines().stream().map(Typed.Row::key).toList());
    assertEquals(List.of(), read("After trip", rows).strays());
  }

  @Test
  void aTickBesideNoLineIsTold() {
    List<RawRow> rows = new ArrayList<>(SHEETS.get("Spares"));
    Typed.Row last = read("Spares", rows).lines().get(read("Spares", rows).lines().size() - 1);
    rows.removeIf(row -> row.number() == last.at().row());
    int lines = read("Spares", rows).lines().size();
    rows.add(new RawRow(last.at().row() + 1, List.of(text(last.at().column(), "yes"))));
    rows.sort(java.util.Comparator.comparing(RawRow::number));
    TypedLines found = read("Spares", rows);
    assertEquals(lines, found.lines().size());
    assertEquals(
        List.of(
            new Typed.Stray(new Cell("Spares", last.at().row() + 1, last.at().column()), "yes")),
        found.strays());
  }

  @Test
  void ticksUnderAHeadingThatLostAColumnAreTold() {
    for (String sheet : List.of("Spares", "Buy list", "Event packing")) {
      List<RawRow> rows =
          SHEETS.get(sheet).stream()
              .map(
                  row ->
                      new RawRow(
                          row.number(),
                          row.cells().stream()
                              .filter(cell -> !cell.text().equals("Colour"))
                              .toList()))
              .toList();
      TypedLines found = read(sheet, rows);
      assertEquals(List.of(), found.lines());
      assertEquals(read(sheet, SHEETS.get(sheet)).lines().size(), found.strays().size());
    }
  }
}
