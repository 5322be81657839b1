package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookRefused;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.read.BoundColumn;
import sparewell.workbook.read.HeaderRow;
import sparewell.workbook.read.UnusableInput;
import sparewell.workbook.value.Words;

/** Table of the workbook that new rows are added to; {@code all} has its examples too. */
record TargetTable(
    InputSheet sheet, SheetEntry entry, HeaderRow header, RawRow headings, List<RawRow> all) {
  private static final int HEADER_WITHIN = 20;

  /** Finds the table; refuses where something else stands below its rows. */
  static TargetTable of(BookCells cells, InputSheet sheet, SheetEntry entry)
      throws UnusableInput, WorkbookRefused {
    List<RawRow> rows = new ArrayList<>();
    cells.rows(entry, rows::add);
    Optional<RawRow> headings =
        rows.stream()
            .takeWhile(row -> row.number() <= HEADER_WITHIN)
            .filter(row -> HeaderRow.of(sheet, row).complete())
            .findFirst();
    if (headings.isEmpty()) {
      throw new UnusableInput(
          "The sheet '%s' has no header row within its first 20 rows, so no rows can be added to it."
              .formatted(entry.name()));
    }
    HeaderRow header = HeaderRow.of(sheet, headings.get());
    rows.removeIf(row -> row.number() <= header.row() || !filled(row, header));
    TargetTable table = new TargetTable(sheet, entry, header, headings.get(), rows);
    table.requireWholeLastRow();
    return table;
  }

  /** Formulas without a result do not count: they also stand in rows still to be filled. */
  private static boolean filled(RawRow row, HeaderRow header) {
    return header.columns().values().stream()
        .flatMap(column -> row.at(column.index()).stream())
        .anyMatch(cell -> !cell.blank() && cell.kind() != RawCell.Kind.UNCOMPUTED);
  }

  /** Refuses a last row that lacks required cells: a total, a remark or half a row. */
  private void requireWholeLastRow() throws UnusableInput {
    if (all.isEmpty() || last().example()) {
      return;
    }
    List<String> missing =
        sheet.requiredColumns().stream()
            .filter(name -> last().at(header.columns().get(name).index()).isEmpty())
            .toList();
    if (!missing.isEmpty()) {
      throw new UnusableInput(
          "Row %d of the sheet '%s' (%s) is not a complete row: it lacks %s. Rows are added below the"
                  .formatted(
                      last().number(),
                      entry.name(),
                      last().cells().stream().findFirst().map(Words::text).orElse(""),
                      String.join(", ", missing))
              + " last row, so complete it or move it elsewhere first.");
    }
  }

  private RawRow last() {
    return all.get(all.size() - 1);
  }

  int headerRow() {
    return header.row();
  }

  /** The last row that holds anything; the header where none does. */
  int lastRow() {
    return all.isEmpty() ? header.row() : last().number();
  }

  /** The last of the angler's rows, whose formats go on; 0 where there is none. */
  int modelRow() {
    return model().map(RawRow::number).orElse(0);
  }

  private Optional<RawRow> model() {
    return rows().stream().reduce((a, b) -> b);
  }

  /** Returns whether the angler's last row holds a plain number in a column. */
  boolean numeric(BoundColumn column) {
    return model()
        .flatMap(row -> row.at(column.index()))
        .filter(cell -> cell.kind() == RawCell.Kind.NUMBER)
        .isPresent();
  }

  List<RawRow> rows() {
    return all.stream().filter(row -> !row.example()).toList();
  }

  /** Heading of an undeclared column that joins the table without a gap; else empty. */
  Optional<String> ownHeading(int column) {
    boolean declared = columns().contains(column);
    int from = Math.min(column, firstColumn());
    int to = Math.max(column, lastColumn());
    for (int at = from; at <= to; at++) {
      boolean between = at >= firstColumn() && at <= lastColumn();
      if (declared || !between && headings.at(at).isEmpty()) {
        return Optional.empty();
      }
    }
    return headings.at(column).map(Words::text);
  }

  int firstColumn() {
    return columns().get(0);
  }

  int lastColumn() {
    return columns().get(columns().size() - 1);
  }

  private List<Integer> columns() {
    return header.columns().values().stream().map(BoundColumn::index).sorted().toList();
  }
}
