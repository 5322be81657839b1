package sparewell.workbook.importing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.read.BoundColumn;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Dates;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Numbers;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/**
 * Key of a row's content, independent of its spelling: rows with equal keys are equal.
 *
 * <p>Columns that the file lacks are not compared, since the angler may have filled them in; size
 * and colour always are, since they name the item.
 */
final class RowKey {
  private static final List<String> ALWAYS = List.of("Size", "Colour");

  private final List<BoundColumn> compared = new ArrayList<>();
  private final UnitSystem units;
  private final DateSystem dates;

  RowKey(CsvTable from, TargetTable to, UnitSystem units, DateSystem dates) {
    for (InputColumn column : to.sheet().columns()) {
      if (from.header().column(column.name()).isPresent() || ALWAYS.contains(column.name())) {
        to.header().column(column.name()).ifPresent(compared::add);
      }
    }
    this.units = units;
    this.dates = dates;
  }

  List<String> of(RawRow row) {
    List<String> key = new ArrayList<>();
    for (BoundColumn bound : compared) {
      String value = row.at(bound.index()).map(cell -> value(bound, cell)).orElse("");
      // A blank cell says the same as its standard value.
      boolean standard = value.equals(Names.fold(bound.column().standard()));
      key.add(standard ? "" : value);
    }
    return key;
  }

  private String value(BoundColumn bound, RawCell cell) {
    Optional<String> understood =
        switch (bound.column().kind()) {
          case SIZE -> Optional.of(Names.fold(Words.size(cell)));
          case DATE -> Dates.date(cell, dates, Remarks.NONE).map(Object::toString);
          case HOURS ->
              Amounts.hours(cell, Remarks.NONE)
                  .map(hours -> Numbers.plain(Math.rint(hours * 1e6) / 1e6));
          case MONEY -> Amounts.money(cell, Remarks.NONE).map(BigDecimal::toPlainString);
          case ITEM_MASS ->
              Amounts.mass(cell, bound.massUnit(units), Remarks.NONE)
                  .map(mass -> String.valueOf(mass.milligrams()));
          case PIECES, COUNT, DAYS, NUMBER ->
              Amounts.number(cell, Remarks.NONE).map(Numbers::plain);
          case YES_NO -> Words.yesNo(cell, Remarks.NONE).map(yes -> yes ? "yes" : "no");
          case CHOICE -> Words.among(cell, bound.column().choices());
          default -> Dates.iso(Words.text(cell)).map(Object::toString);
        };
    return understood.orElseGet(() -> Names.fold(Words.text(cell)));
  }
}
