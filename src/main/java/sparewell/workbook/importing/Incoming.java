package sparewell.workbook.importing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sparewell.finding.Cell;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewCell.Kind;
import sparewell.ooxml.NewRows;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputSheets;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.importing.SheetPlan.Rejected;

/** Rows of one file: which of them are new, and the reader's findings on them. */
final class Incoming {
  private static final int LONGEST_TEXT = 32_767;

  private final CsvTable table;
  private final TargetTable target;
  private final List<NewRow> fresh = new ArrayList<>();
  private final Map<Integer, CsvTable.Line> byRow = new TreeMap<>();
  private final Map<Integer, String> faults = new TreeMap<>();
  private final Set<Integer> openDates = new HashSet<>();
  private final Map<Integer, List<String>> notes = new TreeMap<>();
  private final List<FormulaColumns.CopiedFormula> copied = new ArrayList<>();
  private final List<String> copiedNotes = new ArrayList<>();
  private int known;
  private int examples;

  /** Compares the rows with those of the sheet, unless all are new whatever it holds. */
  Incoming(CsvTable table, TargetTable target, UnitSystem units, DateSystem dates, boolean allNew) {
    this.table = table;
    this.target = target;
    RowKey key = new RowKey(table, target, units, dates);
    Map<List<String>, Integer> there = new HashMap<>();
    if (!allNew) {
      target.rows().forEach(row -> there.merge(key.of(row), 1, Integer::sum));
    }
    boolean repeated = !allNew && target.sheet() == InputSheets.TRIPS; // a trip is there once
    Set<List<String>> met = new HashSet<>();
    ValueMaker maker = new ValueMaker(table, target, units, dates);
    for (CsvTable.Line line : table.lines()) {
      NewRow row = new NewRow(line.number(), maker.values(line));
      RawRow raw = row.raw(0);
      if (raw.cells().isEmpty()) {
        continue;
      }
      List<String> same = key.of(raw);
      if (raw.example()) {
        examples++;
      } else if (there.merge(same, -1, Integer::sum) >= 0 || repeated && !met.add(same)) {
        known++; // each row of the sheet stands for one of the file: two equal losses are two
      } else {
        add(line, row);
      }
    }
  }

  private void add(CsvTable.Line line, NewRow row) {
    int number = target.lastRow() + 1 + fresh.size();
    fresh.add(row);
    byRow.put(number, line);
    if (row.values().stream().anyMatch(value -> value.text().length() > LONGEST_TEXT)) {
      faults.put(number, "a text is longer than a cell can hold");
    }
    List<String> open = table.openDates(line);
    if (!open.isEmpty()) {
      openDates.add(number);
      faults.put(
          number,
          String.join(", ", open)
              + " may be day-month-year or month-day-year; say which with --dates dmy or --dates mdy");
    }
  }

  TargetTable target() {
    return target;
  }

  /** Copies formulas down in new rows; {@code sentences} are said where there are such rows. */
  void copy(List<FormulaColumns.CopiedFormula> formulas, List<String> sentences) {
    copied.addAll(formulas);
    copiedNotes.addAll(sentences);
  }

  /** New rows as they would stand in the sheet. */
  List<RawRow> raw() {
    List<RawRow> raw = new ArrayList<>();
    for (NewRow row : fresh) {
      raw.add(row.raw(target.lastRow() + 1 + raw.size()));
    }
    return raw;
  }

  Optional<String> place(int row) {
    return Optional.ofNullable(byRow.get(row))
        .map(line -> "line " + line.number() + " of " + table.file().getFileName());
  }

  /** Adds a finding of the reader on a new row; {@code all} are keyed by the sheet's name. */
  void hear(Finding finding, Map<String, Incoming> all) {
    int row = finding.at().row();
    if (!byRow.containsKey(row) || openDates.contains(row)) {
      return; // one fault is enough where the order of a date is not known
    }
    Finding spoken = inLines(finding, all);
    if (finding.severity() == Severity.ERROR) {
      faults.merge(row, spoken.message(), (a, b) -> a + "; " + b);
    } else if (finding.severity() == Severity.WARNING) {
      notes
          .computeIfAbsent(row, one -> new ArrayList<>())
          .add(place(row).orElse("") + ": " + spoken.message() + " (" + spoken.done() + ").");
    }
  }

  /** Replaces places of new rows by their lines in the file. */
  private Finding inLines(Finding finding, Map<String, Incoming> all) {
    List<Object> details = new ArrayList<>(finding.details());
    details.replaceAll(
        detail ->
            detail instanceof Cell place
                ? Optional.ofNullable(all.get(place.sheet()))
                    .flatMap(rows -> rows.place(place.row()))
                    .map(Object.class::cast)
                    .orElse(detail)
                : detail);
    return new Finding(finding.code(), finding.at(), details);
  }

  SheetPlan plan() {
    List<NewRow> added = new ArrayList<>();
    List<List<NewCell>> cells = new ArrayList<>();
    List<Rejected> rejected = new ArrayList<>();
    int number = target.lastRow();
    for (NewRow row : fresh) {
      String fault = faults.get(++number);
      if (fault == null) {
        added.add(row);
        cells.add(withFormulas(row, target.lastRow() + added.size()));
      } else {
        rejected.add(new Rejected(row.line(), byRow.get(number).cells(), fault));
      }
    }
    NewRows rows =
        new NewRows(
            target.entry(),
            target.headerRow(),
            target.lastRow(),
            target.modelRow(),
            target.firstColumn(),
            target.lastColumn(),
            cells);
    return new SheetPlan(
        table.file(),
        table.delimiter(),
        table.headings(),
        rows,
        added,
        known,
        rejected,
        remarks(!added.isEmpty()));
  }

  private List<NewCell> withFormulas(NewRow row, int number) {
    List<NewCell> cells = new ArrayList<>(row.values());
    for (FormulaColumns.CopiedFormula formula : copied) {
      formula
          .at(number)
          .ifPresent(text -> cells.add(new NewCell(formula.column(), Kind.FORMULA, text, 0)));
    }
    return cells;
  }

  private List<String> remarks(boolean adds) {
    List<String> said = new ArrayList<>();
    if (!table.ignored().isEmpty()) {
      said.add("Columns not used: " + String.join(", ", table.ignored()) + ".");
    }
    if (!table.renamed().isEmpty()) {
      said.add("Columns read by other names: " + String.join(", ", table.renamed()) + ".");
    }
    table
        .dates()
        .proof()
        .ifPresent(
            date ->
                said.add(
                    "Its dates are read as %s, as '%s' proves."
                        .formatted(table.dates().order().orElseThrow().words(), date)));
    if (examples > 0) {
      said.add("Rows that begin with 'Example:' are left out (" + examples + ").");
    }
    if (adds) {
      said.addAll(copiedNotes);
    }
    notes.keySet().removeAll(faults.keySet()); // nothing was done about a row that is not taken
    notes.values().forEach(said::addAll);
    return said;
  }
}
