package sparewell.render;

import sparewell.table.Block;
import sparewell.table.Format;
import sparewell.units.UnitSystem;

/** Cells to type into beside no table: label in the first column, cell in the second. */
final class FormBlock {
  private static final double WIDEST_LABEL_POINTS = 230;
  private static final double ENTRY_POINTS = 58; // a date

  private FormBlock() {}

  static void widen(Block.Form form, Grid grid) {
    double label = 0;
    double entry = ENTRY_POINTS;
    for (Block.Field field : form.fields()) {
      label = Math.max(label, TextSize.width(field.label(), Look.BODY_POINTS, false));
      entry = Math.max(entry, field.entry().widthPoints());
    }
    double around = 2 * Measure.CELL_MARGIN_POINTS;
    label = Math.min(label, WIDEST_LABEL_POINTS) + around;
    grid.widths.merge(1, Measure.characters(label), Math::max);
    grid.widths.merge(2, Measure.characters(entry + around), Math::max);
    grid.lastPrintedColumn = Math.max(grid.lastPrintedColumn, 2);
  }

  static void lay(
      Block.Form form, Grid grid, int firstRow, UnitSystem units, RenderOptions options) {
    int row = firstRow;
    for (Block.Field field : form.fields()) {
      TextBlock.put(field.label(), grid, row, 1, Look.DEFAULT);
      Object value = SheetTable.cellValue(Format.NUMBER, field.value(), units, options);
      grid.enter(row++, 2, value, field.entry());
    }
  }
}
