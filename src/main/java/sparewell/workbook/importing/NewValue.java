package sparewell.workbook.importing;

import java.time.LocalDate;
import java.util.Optional;
import sparewell.workbook.grid.NumberShape;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.value.Numbers;

/**
 * A value for a cell of the angler's sheet.
 *
 * @param column counted from 1
 * @param text the value as text
 * @param number the value where it is a number
 * @param date the value where it is a date
 */
public record NewValue(int column, String text, Optional<Double> number, Optional<LocalDate> date) {
  static NewValue ofText(int column, String text) {
    return new NewValue(column, text, Optional.empty(), Optional.empty());
  }

  static NewValue ofNumber(int column, double number) {
    return new NewValue(column, Numbers.plain(number), Optional.of(number), Optional.empty());
  }

  static NewValue ofDate(int column, LocalDate date) {
    return new NewValue(column, date.toString(), Optional.empty(), Optional.of(date));
  }

  /** The cell as the analyser would read it. */
  RawCell raw() {
    return number.isPresent()
        ? new RawCell(column, RawCell.Kind.NUMBER, "", number.get(), NumberShape.GENERAL)
        : RawCell.text(column, text);
  }
}
