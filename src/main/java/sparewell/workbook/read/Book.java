package sparewell.workbook.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Settings;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.DateSystem;

/** The tables of one workbook, and what all of their rows share while they are read. */
record Book(
    Map<InputSheet, InputTable> tables,
    Settings settings,
    DateSystem dates,
    Spellings spellings,
    Findings findings) {

  /** Reads each row of a sheet; a sheet that the workbook lacks has none. */
  void each(InputSheet sheet, Consumer<Row> reader) {
    Optional<InputTable> table = Optional.ofNullable(tables.get(sheet));

    table.map(InputTable::rows).orElse(List.of()).stream()
        .map(raw -> new Row(table.orElseThrow(), raw, settings.units(), dates, findings))
        .forEach(reader);
  }

  /** What the rows of a sheet give, those left out that give nothing. */
  <T> List<T> list(InputSheet sheet, Function<Row, Optional<T>> reader) {
    List<T> all = new ArrayList<>();
    each(sheet, row -> reader.apply(row).ifPresent(all::add));
    return all;
  }

  /** Returns whether a row's Date is after the date of analysis; it is remarked then. */
  boolean isLater(Row row, LocalDate date) {
    boolean later = date.isAfter(settings.asOf());
    if (later) {
      row.say("Date", Code.AFTER_AS_OF, date, settings.asOf());
    }
    return later;
  }

  String shown(String column, String text) {
    return spellings.shown(column, text);
  }

  /** A name defined by the row's own column, in the spelling first met. */
  Optional<String> name(Row row, String column) {
    return row.text(column).map(text -> shown(column, text));
  }
}
