package sparewell.workbook.importing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.units.UnitSystem;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.read.SeasonReader;
import sparewell.workbook.read.SheetChoice;
import sparewell.workbook.read.UnusableInput;

/** Plans which rows of files are added to a workbook. */
public final class ImportPlanner {
  private ImportPlanner() {}

  /**
   * Plans an import, file by file in the order of {@link ImportSource#SHEETS}; nothing is written.
   */
  public static List<SheetPlan> plan(
      WorkbookPackage book, List<ImportSource> sources, LocalDate today, Optional<DateOrder> order)
      throws UnusableInput, WorkbookRefused {
    ReadOptions options = ReadOptions.on(today);
    UnitSystem units = SeasonReader.read(book, options).season().settings().units();

    Map<InputSheet, Incoming> incoming = incoming(book, sources, units, order);
    Map<InputSheet, List<RawRow>> more = new LinkedHashMap<>();
    incoming.forEach((sheet, rows) -> more.put(sheet, rows.raw()));
    Map<String, Incoming> byName =
        incoming.values().stream()
            .collect(Collectors.toMap(i -> i.target().entry().name(), i -> i));
    boolean any = more.values().stream().anyMatch(rows -> !rows.isEmpty());
    List<Finding> findings = any ? SeasonReader.read(book, options, more).findings() : List.of();
    for (Finding finding : findings) {
      Incoming rows = byName.get(finding.at().sheet());
      if (rows != null) {
        rows.hear(finding, byName);
      }
    }
    return incoming.values().stream().map(Incoming::plan).toList();
  }

  private static Map<InputSheet, Incoming> incoming(
      WorkbookPackage book, List<ImportSource> sources, UnitSystem units, Optional<DateOrder> order)
      throws UnusableInput, WorkbookRefused {
    BookCells cells = BookCells.of(book);
    SheetChoice sheets = SheetChoice.of(book.sheets(), new Findings());
    List<ImportSource> ordered = new ArrayList<>(sources);
    ordered.sort(Comparator.comparingInt(s -> ImportSource.SHEETS.indexOf(s.sheet())));
    Map<InputSheet, Incoming> incoming = new LinkedHashMap<>();
    List<String> faults = new ArrayList<>();
    for (ImportSource source : ordered) {
      try {
        CsvTable table = CsvTable.of(source, order);
        TargetTable target = target(sheets, cells, source.sheet());
        requireColumns(
            table, target, new ValueMaker(table, target, units, cells.dates()).homeless());
        Incoming rows =
            new Incoming(table, target, units, cells.dates(), source.made().isPresent());
        FormulaColumns own = FormulaColumns.of(book, target, rows.raw().size());
        rows.copy(own.copied(), own.notes(book, target));
        incoming.put(source.sheet(), rows);
      } catch (UnusableInput unusable) {
        faults.addAll(unusable.faults());
      }
    }
    if (!faults.isEmpty()) {
      throw new UnusableInput(faults);
    }
    return incoming;
  }

  private static TargetTable target(SheetChoice sheets, BookCells cells, InputSheet sheet)
      throws UnusableInput, WorkbookRefused {
    Optional<SheetEntry> entry = sheets.of(sheet);
    if (entry.isEmpty()) {
      throw new UnusableInput(
          "The workbook has no sheet '%s'. Copy it from a new workbook (sparewell new) and import"
                  .formatted(sheet.name())
              + " again.");
    }
    return TargetTable.of(cells, sheet, entry.get());
  }

  /** Refuses values without a column, since leaving out a colour would change the item. */
  private static void requireColumns(CsvTable table, TargetTable target, List<InputColumn> homeless)
      throws UnusableInput {
    if (!homeless.isEmpty()) {
      throw new UnusableInput(
          "The sheet '%s' has no column for the values in %s under %s."
                  .formatted(
                      target.entry().name(),
                      table.file(),
                      homeless.stream().map(InputColumn::name).collect(Collectors.joining(", ")))
              + " Add the column to the sheet's header row, or take it out of the file.");
    }
  }
}
