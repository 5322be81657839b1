package sparewell.sheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.load.LoadReport;
import sparewell.load.LoadReport.SummaryRow;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Table;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;

/** The load sheet's totals, centres, margins and test results as one table. */
final class LoadSummary {
  private static final Columns<SummaryRow> COLUMNS = Columns.of("Load summary");

  private static final Map<String, List<String>> WORDS = Columns.texts("Load quantities");

  private LoadSummary() {}

  static Table<SummaryRow> table(LoadReport report, UnitSystem units) {
    List<Column<SummaryRow>> columns =
        List.of(
            Format.TEXT.inFile("quantity", SummaryRow::quantity),
            COLUMNS.column("Quantity", row -> WORDS.get(row.quantity()).get(1)),
            COLUMNS.column("value", row -> value(row, units)),
            COLUMNS.column("unit", row -> unit(row, units)));
    return COLUMNS.table(report.summary(), columns);
  }

  private static Optional<Object> value(SummaryRow row, UnitSystem units) {
    return row.value()
        .flatMap(
            value ->
                switch (row.kind()) {
                  case MASS -> rounded(Format.MASS, Format.MASS.shown(value, units));
                  case MASS_DIFFERENCE -> rounded(Format.MASS, signedMass((Double) value, units));
                  case LENGTH -> rounded(Format.LENGTH, Format.LENGTH.shown(value, units));
                  case DEGREES -> Format.NUMBER.shown(value, units);
                });
  }

  /** To the decimals of the format: more would show the rounding to whole milligrams. */
  private static Optional<Object> rounded(Format format, Optional<Object> shown) {
    return shown.map(
        value ->
            BigDecimal.valueOf((Double) value)
                .setScale(format.csvDecimals(), RoundingMode.HALF_EVEN)
                .doubleValue());
  }

  /** A mass cannot be negative, a margin can. */
  private static Optional<Object> signedMass(double kg, UnitSystem units) {
    return Format.MASS
        .shown(Mass.of(Math.abs(kg), MassUnit.KILOGRAM), units)
        .map(size -> Math.signum(kg) * (Double) size);
  }

  private static String unit(SummaryRow row, UnitSystem units) {
    return switch (row.kind()) {
      case MASS, MASS_DIFFERENCE -> Format.MASS.csvUnit(units);
      case LENGTH -> Format.LENGTH.csvUnit(units);
      case DEGREES -> "deg";
    };
  }
}
