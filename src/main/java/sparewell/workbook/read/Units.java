package sparewell.workbook.read;

import sparewell.units.LengthUnit;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;

/** The units that hold where neither header nor cell names one. */
record Units(MassUnit item, MassUnit load, LengthUnit length) {
  static Units of(UnitSystem system) {
    return system == UnitSystem.US
        ? new Units(MassUnit.OUNCE, MassUnit.POUND, LengthUnit.INCH)
        : new Units(MassUnit.GRAM, MassUnit.KILOGRAM, LengthUnit.CENTIMETRE);
  }

  MassUnit mass(InputColumn column) {
    return column.kind() == InputColumn.Kind.ITEM_MASS ? item : load;
  }

  String symbol(InputColumn column) {
    return BoundColumn.isMass(column) ? mass(column).symbol() : length.symbol();
  }
}
