package sparewell.render;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import sparewell.table.Column;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Tables as CSV. */
public final class CsvRenderer {
  private static final String FORMULA_STARTS = "=+-@\t\r";
  private static final Pattern PLAIN_NUMBER =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");

  private CsvRenderer() {}

  /**
   * Writes a table as RFC 4180: header first, lines ended by CR LF, an empty cell where a value is
   * not known, dates as yyyy-mm-dd, a point before decimals, no exponents. Text that a spreadsheet
   * would take for a formula gets a leading apostrophe. The writer is flushed, not closed.
   *
   * @throws IOException if the writer fails
   */
  public static <R> void render(Table<R> table, UnitSystem units, Writer out) throws IOException {
    List<Column<R>> columns = table.columns().stream().filter(Column::inCsv).toList();
    // Not closed: the writer belongs to the caller.
    CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
    printer.printRecord(columns.stream().map(column -> name(column, units)).toList());
    Object[] cells = new Object[columns.size()];
    for (R row : table.rows()) {
      for (int i = 0; i < cells.length; i++) {
        Column<R> column = columns.get(i);
        cells[i] = cell(column, column.value().apply(row), units).orElse(null);
      }
      printer.printRecord(cells);
    }
    printer.flush();
  }

  /**
   * Writes a table to a file in UTF-8 without byte order mark.
   *
   * @throws IOException if the file cannot be written
   */
  public static void render(Table<?> table, UnitSystem units, Path file) throws IOException {
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      render(table, units, out);
    }
  }

  /** A table as CSV text. */
  public static String text(Table<?> table, UnitSystem units) {
    java.io.StringWriter out = new java.io.StringWriter();
    try {
      render(table, units, out);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return out.toString();
  }

  /** A column's name with its unit, such as {@code weight_lb}. */
  static String name(Column<?> column, UnitSystem units) {
    String unit = column.format().csvUnit(units);
    return unit.isEmpty() ? column.csvName() : column.csvName() + "_" + unit;
  }

  private static Optional<String> cell(Column<?> column, Object value, UnitSystem units) {
    return Optional.ofNullable(value)
        .flatMap(known -> column.format().shown(known, units))
        .map(
            shown ->
                shown instanceof Number number
                    ? ShownNumber.rounded(number, column.format()).toPlainString()
                    : neutral(shown.toString()))
        // Commons CSV quotes an empty text in front of a line, but not an absent one.
        .filter(text -> !text.isEmpty());
  }

  /** Text that no spreadsheet takes for a formula. */
  static String neutral(String text) {
    boolean risky = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
    return risky && !PLAIN_NUMBER.matcher(text).matches() ? "'" + text : text;
  }
}
