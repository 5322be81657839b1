package sparewell.workbook.read;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Findings;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.grid.Formulas;
import sparewell.workbook.grid.RawRow;

/** Reads the angler's workbook into a season. */
public final class SeasonReader {
  private SeasonReader() {}

  /**
   * Reads all input sheets; nothing is changed.
   *
   * @throws UnusableInput where required sheets or columns are missing; all of them are listed
   * @throws WorkbookRefused where a part of the file is damaged
   */
  public static ReadResult read(WorkbookPackage workbook, ReadOptions options)
      throws UnusableInput, WorkbookRefused {
    return read(workbook, options, Map.of());
  }

  /**
   * Reads all input sheets as if further rows stood in them.
   *
   * @param more rows by input sheet, in the sheet's own columns; ignored where the workbook lacks
   *     the sheet
   */
  public static ReadResult read(
      WorkbookPackage workbook, ReadOptions options, Map<InputSheet, List<RawRow>> more)
      throws UnusableInput, WorkbookRefused {
    Findings findings = new Findings();
    SheetChoice chosen = SheetChoice.of(workbook.sheets(), findings);
    BookCells cells = BookCells.of(workbook);
    Map<InputSheet, TableScan> scans = scan(chosen, cells, more, findings);
    List<String> faults = faults(chosen, scans);
    if (!faults.isEmpty()) {
      throw new UnusableInput(faults);
    }
    Optional<InputTable> settingsTable =
        Optional.ofNullable(scans.get(InputSheets.SETTINGS)).flatMap(s -> s.table(UnitSystem.US));
    Settings settings = SettingsReader.read(settingsTable, cells.dates(), options, findings);
    Map<InputSheet, InputTable> tables = new LinkedHashMap<>();
    scans.forEach(
        (sheet, scan) -> scan.table(settings.units()).ifPresent(t -> tables.put(sheet, t)));
    Book book = new Book(tables, settings, cells.dates(), Spellings.of(tables.values()), findings);
    Season season = season(book);
    List<String> order = chosen.names();
    Map<String, Map<String, Integer>> columns = new HashMap<>();
    tables.values().forEach(table -> columns.put(table.name(), table.columnNumbers()));
    return new ReadResult(season, Findings.inOrder(findings.list(), order), order, columns);
  }

  private static Map<InputSheet, TableScan> scan(
      SheetChoice chosen, BookCells cells, Map<InputSheet, List<RawRow>> more, Findings findings)
      throws WorkbookRefused {
    Formulas formulas = cells.formulas();
    List<InputSheet> present =
        InputSheets.ALL.stream().filter(sheet -> chosen.of(sheet).isPresent()).toList();
    List<Scanned> all =
        present.parallelStream()
            .map(
                sheet -> {
                  SheetEntry entry = chosen.of(sheet).orElseThrow();
                  TableScan scan = new TableScan(sheet, entry.name(), formulas, findings);
                  return scanned(entry, cells, scan, more.getOrDefault(sheet, List.of()));
                })
            .toList();
    Map<InputSheet, TableScan> scans = new LinkedHashMap<>();
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).refused().isPresent()) {
        throw all.get(i).refused().get();
      }
      scans.put(present.get(i), all.get(i).scan());
    }
    return scans;
  }

  private record Scanned(TableScan scan, Optional<WorkbookRefused> refused) {}

  private static Scanned scanned(
      SheetEntry entry, BookCells cells, TableScan scan, List<RawRow> more) {
    try {
      cells.rows(entry, scan);
      more.forEach(scan);
      return new Scanned(scan, Optional.empty());
    } catch (WorkbookRefused refused) {
      return new Scanned(scan, Optional.of(refused));
    }
  }

  private static List<String> faults(SheetChoice chosen, Map<InputSheet, TableScan> scans) {
    List<String> faults = new ArrayList<>();
    if (chosen.noneMeant()) {
      return List.of(
          "None of its sheets is one of a tackle workbook. Make one with 'sparewell new FILE' and"
              + " fill that in, or copy its sheets into yours.");
    }
    for (InputSheet sheet : InputSheets.ALL) {
      if (sheet.required() && !scans.containsKey(sheet)) {
        faults.add(chosen.missing(sheet));
      }
      Optional.ofNullable(scans.get(sheet)).flatMap(TableScan::fault).ifPresent(faults::add);
    }
    return faults;
  }

  private static Season season(Book book) {
    PlacesReader places = new PlacesReader(book);
    StylesReader styles = new StylesReader(book);
    ItemsReader items = new ItemsReader(book, styles, places);
    ItemMatch match = new ItemMatch(items, book.findings());
    TripsReader trips = new TripsReader(book);
    var styleHours = trips.styleHours(styles);
    var losses = new LossesReader(book, trips, items, match).losses();
    var ledgers = new LedgersReader(book, styles, places, items, match);
    var restocks = ledgers.restocks();
    var transfers = ledgers.transfers();
    var recounts = ledgers.recounts();
    match.conclude();
    Keys events = new Keys("the sheet Events");
    BoatReader boat = new BoatReader(book);
    return new Season(
        book.settings(),
        List.copyOf(styles.styles.values()),
        items.stock,
        places.boxes(),
        places.compartments,
        trips.trips,
        styleHours,
        losses,
        restocks,
        transfers,
        places.log.moves,
        recounts,
        new EventsReader(book, styles, places, items, trips.covers, events).events(),
        boat.loads(),
        boat.boat());
  }
}
