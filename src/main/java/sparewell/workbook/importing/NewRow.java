package sparewell.workbook.importing;

import java.util.List;
import java.util.stream.Collectors;
import sparewell.workbook.grid.RawRow;

/**
 * A row to add.
 *
 * @param line the line of the file it comes from, counted from 1
 * @param values its values, by column of the sheet
 */
public record NewRow(long line, List<NewValue> values) {
  public NewRow {
    values = List.copyOf(values);
  }

  /** The values on a line. */
  public String shown() {
    return values.stream().map(NewValue::text).collect(Collectors.joining(" | "));
  }

  RawRow raw(int number) {
    return new RawRow(number, values.stream().map(NewValue::raw).toList());
  }
}
