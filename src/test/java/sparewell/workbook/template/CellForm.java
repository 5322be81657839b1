package sparewell.workbook.template;

import sparewell.units.LengthUnit;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn.Kind;

/**
 * Number format and width of cells of a kind in a unit system.
 *
 * @param unit shown in brackets after the header; empty where there is none
 * @param pattern number format
 * @param widthChars least column width in characters
 * @param left whether cells stand to the left
 */
record CellForm(String unit, String pattern, int widthChars, boolean left) {
  /** Keeps what is typed as text, so that a size of 3/8 does not become a date. */
  static final String TEXT = "@";

  /** Keeps a typed 3/8 a number shown as a fraction, never a date. */
  static final String FRACTION = "# ??/??";

  static final String DATE = "yyyy-mm-dd";

  static CellForm of(Kind kind, UnitSystem units) {
    boolean us = units == UnitSystem.US;
    return switch (kind) {
      case TEXT, SIZE, BY_ROW -> new CellForm("", TEXT, 12, true);
      case CHOICE, YES_NO -> new CellForm("", TEXT, 9, true);
      case ITEM_MASS -> new CellForm(itemUnit(units).symbol(), us ? FRACTION : "0.0", 9, false);
      case LOAD_MASS -> new CellForm(loadUnit(units).symbol(), us ? "0.0" : "0.00", 10, false);
      case LENGTH, POSITION ->
          new CellForm(lengthUnit(units).symbol(), us ? "0.0##" : "0.0", 10, false);
      case PIECES -> new CellForm("", "0", 9, false);
      case COUNT, NUMBER -> new CellForm("", "General", 9, false);
      case HOURS -> new CellForm("", "0.0#", 8, false);
      case DAYS -> new CellForm("", "General", 7, false);
      case MONEY -> new CellForm("", "#,##0.00", 10, false);
      case CHANCE -> new CellForm("", "0.00#", 9, false);
      case DATE -> new CellForm("", DATE, 12, true);
    };
  }

  static MassUnit itemUnit(UnitSystem units) {
    return units == UnitSystem.US ? MassUnit.OUNCE : MassUnit.GRAM;
  }

  static MassUnit loadUnit(UnitSystem units) {
    return units == UnitSystem.US ? MassUnit.POUND : MassUnit.KILOGRAM;
  }

  static LengthUnit lengthUnit(UnitSystem units) {
    return units == UnitSystem.US ? LengthUnit.INCH : LengthUnit.CENTIMETRE;
  }
}
