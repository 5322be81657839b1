package sparewell.workbook.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.Formulas;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Words;

/** Receives the rows of one sheet: finds the header, then keeps cells of declared columns. */
final class TableScan implements Consumer<RawRow> {
  private static final int HEADER_WITHIN = 20;

  private final InputSheet sheet;
  private final String name;
  private final Formulas formulas;
  private final Findings findings;
  private final List<RawRow> rows = new ArrayList<>();
  private Optional<HeaderRow> header = Optional.empty();
  private Optional<HeaderRow> nearest = Optional.empty();

  TableScan(InputSheet sheet, String name, Formulas formulas, Findings findings) {
    this.sheet = sheet;
    this.name = name;
    this.formulas = formulas;
    this.findings = findings;
  }

  @Override
  public void accept(RawRow raw) {
    if (header.isPresent()) {
      keep(raw);
    } else if (raw.number() <= HEADER_WITHIN) {
      HeaderRow candidate = HeaderRow.of(sheet, raw);
      if (candidate.complete()) {
        header = Optional.of(candidate);
      } else if (nearest.isEmpty() || candidate.missing().size() < nearest.get().missing().size()) {
        nearest = Optional.of(candidate);
      }
    }
  }

  private void keep(RawRow raw) {
    if (raw.example()) {
      return;
    }
    List<RawCell> cells = new ArrayList<>();
    for (BoundColumn bound : header.orElseThrow().columns().values()) {
      Optional<RawCell> cell = raw.at(bound.index());
      if (cell.isEmpty() || bound.column().name().equals("Note")) {
        continue;
      }
      RawCell found = cell.get();
      if (found.kind() == RawCell.Kind.UNCOMPUTED) {
        found = computed(raw.number(), bound, found);
      }
      if (!found.blank() && found.kind() != RawCell.Kind.UNCOMPUTED) {
        cells.add(found);
      }
    }
    if (!cells.isEmpty()) {
      rows.add(new RawRow(raw.number(), cells));
    }
  }

  private RawCell computed(int row, BoundColumn bound, RawCell cell) {
    Cell at = new Cell(name, row, bound.index());
    Optional<RawCell> value = formulas.compute(name, row, cell);
    if (value.isPresent()) {
      findings.add(Code.FORMULA_COMPUTED, at, Words.text(value.get()), bound.header());
    } else {
      findings.add(Code.FORMULA_BLANK, at, "", bound.header());
    }
    return value.orElse(cell);
  }

  /** Fault of a required sheet without a header; an optional one is ignored with a finding. */
  Optional<String> fault() {
    if (header.isPresent()) {
      return Optional.empty();
    }
    String all = String.join(", ", sheet.requiredColumns());
    if (!sheet.required()) {
      findings.add(Code.SHEET_WITHOUT_HEADER, Cell.ofSheet(name), all);
      return Optional.empty();
    }
    String lacks =
        nearest
            .filter(row -> !row.columns().isEmpty())
            .map(row -> "row " + row.row() + " lacks " + String.join(", ", row.missing()))
            .orElse("none of the columns " + all + " was found");
    return Optional.of(
        "The sheet '%s' has no header row within its first 20 rows: %s. Put all required columns into"
                .formatted(name, lacks)
            + " one row.");
  }

  /** The table; findings tell of doubtful headers and of a sheet without rows. */
  Optional<InputTable> table(UnitSystem units) {
    if (header.isEmpty()) {
      return Optional.empty();
    }
    HeaderRow found = header.get();
    for (BoundColumn twice : found.twice()) {
      findings.add(
          Code.HEADER_TWICE, new Cell(name, found.row(), twice.index()), twice.column().name());
    }
    for (BoundColumn bound : found.columns().values()) {
      if (bound.unitUnknown()) {
        findings.add(
            Code.HEADER_UNIT,
            new Cell(name, found.row(), bound.index()),
            bound.header(),
            bound.knownUnits(),
            bound.standardUnit(units));
      }
    }
    if (rows.isEmpty() && sheet.required()) {
      findings.add(Code.NO_ROWS, Cell.ofSheet(name));
    }
    return Optional.of(new InputTable(name, found.columns(), rows));
  }
}
