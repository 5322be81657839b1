package sparewell.render;

import java.io.IOException;
import java.io.UncheckedIOException;
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
   * A table as RFC 4180 has it: header first, lines ended by CR LF, an empty cell where a value is
   * not known, dates as yyyy-mm-dd, a point before decimals, no exponents. Text that a spreadsheet
   * would take for a formula gets a leading apostrophe.
   */
  public static String text(Table<?> table, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    try {
      print(table, units, new CSVPrinter(out, CSVFormat.RFC4180));
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return out.toString();
  }

  private static <R> void print(Table<R> table, UnitSystem units, CSVPrinter printer)
      throws IOException {
    List<Column<R>> columns = table.columns().stream().filter(Column::inCsv).toList();
    printer.printRecord(columns.stream().map(column -> name(column, units)).toList());
    Object[] cells = new Object[columns.size()];
    for (R row : table.rows()) {
      for (int i = 0; i < cells.length; i++) {
        Column<R> column = columns.get(i);
        cells[i] = cell(column, column.value().apply(row), units).orElse(null);
      }
      printer.printRecord(cells);
    }
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
                    ? column.format().rounded(number).toPlainString()
                    : neutral(shown.toString()))
        // Commons CSV quotes an empty text in front of a line, but not an absent one.
        .filter(text -> !text.isEmpty());
  }

  static String neutral(String text) {
    boolean risky = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
    return risky && !PLAIN_NUMBER.matcher(text).matches() ? "'" + text : text;
  }
}
