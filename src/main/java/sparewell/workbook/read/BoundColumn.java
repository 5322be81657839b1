package sparewell.workbook.read;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import sparewell.units.LengthUnit;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.value.Names;

/**
 * A declared column found in a sheet.
 *
 * @param index where it stands, counted from 1
 * @param header its header as the angler wrote it
 * @param unit text in brackets, or unit, after the name; empty where none
 */
public record BoundColumn(InputColumn column, int index, String header, String unit) {
  private static final Pattern BRACKETED =
      Pattern.compile("(.+?)[(\\[{]([^()\\[\\]{}]*)[)\\]}][^\\p{L}\\p{N}]*");

  /** The first declared column that a header names; its own names beat a name with unit. */
  static Optional<BoundColumn> of(
      List<InputColumn> declared, boolean inFile, int index, String header) {
    String folded = Names.fold(header);
    for (InputColumn column : declared) {
      if (names(column, inFile).anyMatch(folded::equals)) {
        return Optional.of(new BoundColumn(column, index, header, ""));
      }
    }
    Matcher bracketed = BRACKETED.matcher(header);
    if (bracketed.matches()) {
      String base = Names.fold(bracketed.group(1));
      for (InputColumn column : declared) {
        if (names(column, inFile).anyMatch(base::equals)) {
          return Optional.of(new BoundColumn(column, index, header, bracketed.group(2).strip()));
        }
      }
    }
    for (InputColumn column : declared) {
      Optional<String> unit = trailingUnit(column, inFile, folded);
      if (unit.isPresent()) {
        return Optional.of(new BoundColumn(column, index, header, unit.get()));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> trailingUnit(InputColumn column, boolean inFile, String folded) {
    return names(column, inFile)
        .filter(name -> folded.startsWith(name + " "))
        .map(name -> folded.substring(name.length() + 1))
        .filter(
            rest ->
                isMass(column)
                    ? mass(rest).isPresent()
                    : isLength(column) && length(rest).isPresent())
        .findFirst();
  }

  private static Stream<String> names(InputColumn column, boolean inFile) {
    return column.headers(inFile).stream().map(Names::fold);
  }

  /** Returns whether something stands in brackets that is no unit of what the column holds. */
  boolean unitUnknown() {
    return !unit.isEmpty()
        && (isMass(column) && mass(unit).isEmpty() || isLength(column) && length(unit).isEmpty());
  }

  /** Unit of its masses: the one in its header, else that of the system. */
  public MassUnit massUnit(UnitSystem system) {
    return mass(unit)
        .orElse(
            column.kind() == InputColumn.Kind.ITEM_MASS ? system.itemMass() : system.loadMass());
  }

  LengthUnit lengthUnit(UnitSystem system) {
    return length(unit).orElse(system.length());
  }

  /** Symbol of the unit that holds where the header names none. */
  String standardUnit(UnitSystem system) {
    BoundColumn plain = new BoundColumn(column, index, header, "");
    return isMass(column) ? plain.massUnit(system).symbol() : system.length().symbol();
  }

  String knownUnits() {
    return isMass(column) ? "oz, lb, g, kg" : "in, ft, mm, cm, m";
  }

  private static boolean isMass(InputColumn column) {
    return column.kind() == InputColumn.Kind.ITEM_MASS
        || column.kind() == InputColumn.Kind.LOAD_MASS;
  }

  private static boolean isLength(InputColumn column) {
    return column.kind() == InputColumn.Kind.LENGTH || column.kind() == InputColumn.Kind.POSITION;
  }

  private static Optional<MassUnit> mass(String unit) {
    return MassUnit.ofSymbol(unit.replace(".", ""));
  }

  private static Optional<LengthUnit> length(String unit) {
    return LengthUnit.ofSymbol(unit.replace(".", ""));
  }
}
