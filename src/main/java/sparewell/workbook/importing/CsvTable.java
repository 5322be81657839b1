package sparewell.workbook.importing;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.read.BoundColumn;
import sparewell.workbook.read.HeaderRow;
import sparewell.workbook.read.UnusableInput;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Words;

/**
 * A CSV file parsed as rows for an input sheet.
 *
 * @param delimiter comma, semicolon or tab
 * @param headings the header's cells as written
 * @param lines the rows below it that hold anything
 */
record CsvTable(
    Path file,
    char delimiter,
    HeaderRow header,
    List<String> headings,
    List<Line> lines,
    FileDates dates) {
  private static final int HEADER_WITHIN = 20;
  private static final List<Character> DELIMITERS = List.of(',', ';', '\t');

  /** A row of the file, and the line it begins on, counted from 1. */
  record Line(long number, List<String> cells) {

    /** Text of a cell; empty beyond the last. */
    String at(int column) {
      return column <= cells.size() ? cells.get(column - 1) : "";
    }

    boolean blank() {
      return cells.stream().allMatch(cell -> Names.clean(cell).isEmpty());
    }
  }

  static CsvTable of(ImportSource source, Optional<DateOrder> order) throws UnusableInput {
    return source.made().isPresent() ? made(source) : read(source.file(), source.sheet(), order);
  }

  /** Rows made by this program, with the columns that they have values for. */
  private static CsvTable made(ImportSource source) {
    List<Map<String, String>> rows = source.made().orElseThrow();
    List<String> headings =
        source.sheet().columns().stream()
            .map(InputColumn::name)
            .filter(
                name ->
                    rows.stream().anyMatch(row -> row.containsKey(name))
                        || source.sheet().column(name).required())
            .toList();
    List<Line> lines = new ArrayList<>();
    for (Map<String, String> row : rows) {
      lines.add(
          new Line(
              lines.size() + 1,
              headings.stream().map(name -> row.getOrDefault(name, "")).toList()));
    }
    return new CsvTable(
        source.file(),
        ',',
        HeaderRow.of(source.sheet(), raw(new Line(0, headings))),
        headings,
        lines,
        new FileDates(Optional.empty(), Optional.empty()));
  }

  /** Reads a file; the delimiter is the one under which the header is found. */
  static CsvTable read(Path file, InputSheet sheet, Optional<DateOrder> order)
      throws UnusableInput {
    String text = FileText.read(file);
    Optional<Character> named = named(text);
    String body = named.isPresent() ? text.substring(text.indexOf('\n') + 1) : text;
    long before = named.isPresent() ? 1 : 0;
    Optional<HeaderRow> nearest = Optional.empty();
    Optional<String> broken = Optional.empty();
    for (char delimiter : named.map(List::of).orElse(DELIMITERS)) {
      List<Line> lines;
      try {
        lines = lines(body, delimiter, before);
      } catch (IOException | UncheckedIOException | IllegalStateException e) {
        broken = Optional.of("a quotation mark in it is never closed, or misplaced");
        continue;
      }
      for (int i = 0; i < Math.min(HEADER_WITHIN, lines.size()); i++) {
        HeaderRow candidate = HeaderRow.ofFile(sheet, raw(lines.get(i)));
        if (candidate.complete()) {
          List<Line> below =
              lines.subList(i + 1, lines.size()).stream().filter(line -> !line.blank()).toList();
          FileDates dates = FileDates.of(order, candidate.columns().values(), below);
          return new CsvTable(file, delimiter, candidate, lines.get(i).cells(), below, dates);
        }
        if (nearest.isEmpty() || candidate.missing().size() < nearest.get().missing().size()) {
          nearest = Optional.of(candidate);
        }
      }
    }
    throw new UnusableInput(fault(file, sheet, nearest, broken));
  }

  private static String fault(
      Path file, InputSheet sheet, Optional<HeaderRow> nearest, Optional<String> broken) {
    String all = String.join(", ", sheet.requiredColumns());
    String lacks =
        nearest
            .filter(row -> !row.columns().isEmpty())
            .map(row -> "its header lacks " + String.join(", ", row.missing()))
            .or(() -> broken)
            .orElse("no header was found in its first 20 rows");
    return "%s cannot be read as %s: %s. It needs the columns %s."
        .formatted(file, sheet.name(), lacks, all);
  }

  /** Delimiter in the first line, where some spreadsheet programs write it. */
  private static Optional<Character> named(String text) {
    String first = text.lines().findFirst().orElse("").strip();
    return first.matches("(?i)\"?sep=[,;\t]\"?")
        ? Optional.of(first.replace("\"", "").charAt(4))
        : text.toLowerCase(Locale.ROOT).startsWith("sep=\t") ? Optional.of('\t') : Optional.empty();
  }

  private static List<Line> lines(String text, char delimiter, long before) throws IOException {
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(delimiter)
            .setIgnoreEmptyLines(false)
            .setTrailingData(true)
            .get();
    List<Line> lines = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
      long number = 1;
      for (CSVRecord record : parser) {
        lines.add(new Line(before + number, record.stream().map(Words::plain).toList()));
        number = parser.getCurrentLineNumber() + 1;
      }
    }
    return lines;
  }

  private static RawRow raw(Line line) {
    List<RawCell> cells = new ArrayList<>();
    for (int i = 0; i < line.cells().size(); i++) {
      String text = Names.clean(line.cells().get(i));
      if (!text.isEmpty()) {
        cells.add(RawCell.text(i + 1, text));
      }
    }
    return new RawRow((int) line.number(), cells);
  }

  /** Headings that no declared column has, and repeated ones. */
  List<String> ignored() {
    Set<Integer> used =
        header.columns().values().stream().map(BoundColumn::index).collect(Collectors.toSet());
    return IntStream.range(0, headings.size())
        .filter(at -> !used.contains(at + 1))
        .mapToObj(at -> Names.clean(headings.get(at)))
        .filter(heading -> !heading.isEmpty())
        .toList();
  }

  /** Columns with another name than the sheet's, like {@code 'Lure' as Style}. */
  List<String> renamed() {
    return header.columns().values().stream()
        .filter(
            bound ->
                bound.column().fileHeadings().stream()
                    .anyMatch(h -> Names.fold(h).equals(Names.fold(bound.header()))))
        .map(bound -> "'" + bound.header() + "' as " + bound.column().name())
        .toList();
  }

  /** A cell, a date in figures as yyyy-mm-dd where the order is known. */
  String dated(Line line, BoundColumn column) {
    String text = Names.clean(line.at(column.index()));
    return FileDates.holdsDates(column.column()) ? dates.plain(text) : text;
  }

  /** The dates of a line whose order is not known, each with its column's heading. */
  List<String> openDates(Line line) {
    return header.columns().values().stream()
        .filter(bound -> FileDates.holdsDates(bound.column()))
        .filter(bound -> dates.open(Names.clean(line.at(bound.index()))))
        .map(bound -> "'" + Names.clean(line.at(bound.index())) + "' in " + bound.header())
        .toList();
  }
}
