package sparewell.workbook.read;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.finding.Code;
import sparewell.units.LengthUnit;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Remarks;

/** Reads a moment: a number, and a unit of mass with one of length. */
final class Moments {
  private static final Pattern WITH_UNIT = Pattern.compile("([\\d.,/ ]+?) *(\\p{L}.*)");

  private Moments() {}

  /** The moment in kg m, at least 0; lb in or kg cm where neither cell nor name gives units. */
  static Optional<Double> read(RawCell cell, String unit, UnitSystem units, Remarks remarks) {
    String pair = unit;
    RawCell number = cell;
    Matcher parts =
        WITH_UNIT.matcher(cell.kind() == RawCell.Kind.TEXT ? Names.clean(cell.text()) : "");
    if (parts.matches()) {
      pair = parts.group(2);
      number = RawCell.text(cell.column(), parts.group(1));
    }
    Optional<Double> kilogramMetres = size(pair, units);
    if (kilogramMetres.isEmpty()) {
      remarks.unusable(Code.UNKNOWN_UNIT, "'" + pair + "' is not like lb in or kg cm");
      return Optional.empty();
    }
    return Amounts.number(number, remarks).map(amount -> amount * kilogramMetres.get());
  }

  private static Optional<Double> size(String pair, UnitSystem units) {
    if (pair.isBlank()) {
      return Optional.of(
          units == UnitSystem.US
              ? kilogramMetres(MassUnit.POUND, LengthUnit.INCH)
              : kilogramMetres(MassUnit.KILOGRAM, LengthUnit.CENTIMETRE));
    }
    List<String> words = List.of(Names.fold(pair).replaceAll("[^a-z]+", " ").strip().split(" "));
    if (words.size() != 2) {
      return Optional.empty();
    }
    Optional<MassUnit> mass =
        MassUnit.ofSymbol(words.get(0)).or(() -> MassUnit.ofSymbol(words.get(1)));
    Optional<LengthUnit> length =
        LengthUnit.ofSymbol(words.get(1)).or(() -> LengthUnit.ofSymbol(words.get(0)));
    return mass.flatMap(m -> length.map(l -> kilogramMetres(m, l)));
  }

  private static double kilogramMetres(MassUnit mass, LengthUnit length) {
    return mass.milligrams() * 1e-6 * (length.micrometres() * 1e-6);
  }
}
