package sparewell.workbook.importing;

import java.util.List;
import java.util.stream.Collectors;
import sparewell.ooxml.NewCell;
import sparewell.workbook.grid.NumberShape;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;

/** A row to add, and the line of the file it comes from, counted from 1. */
public record NewRow(long line, List<NewCell> values) {

  public String shown() {
    return values.stream().map(NewCell::text).collect(Collectors.joining(" | "));
  }

  RawRow raw(int number) {
    return new RawRow(number, values.stream().map(NewRow::raw).toList());
  }

  /** The cell as the analysis would read it. */
  static RawCell raw(NewCell cell) {
    return switch (cell.kind()) {
      case NUMBER ->
          new RawCell(cell.column(), RawCell.Kind.NUMBER, "", cell.number(), NumberShape.GENERAL);
      case FORMULA -> RawCell.of(cell.column(), RawCell.Kind.UNCOMPUTED, "");
      case TEXT, DATE -> RawCell.text(cell.column(), cell.text());
    };
  }
}
