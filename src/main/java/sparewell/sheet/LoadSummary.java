package sparewell.sheet;

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
            COLUMNS.column(
                "unit",
                row -> row.kind() == SummaryRow.Kind.DEGREES ? "deg" : format(row).csvUnit(units)));
    return COLUMNS.table(report.summary(), columns);
  }

  private static Optional<Object> value(SummaryRow row, UnitSystem units) {
    return row.value()
        .flatMap(
            value ->
                row.kind() == SummaryRow.Kind.MASS_DIFFERENCE
                    ? signedMass((Double) value, units)
                    : format(row).shown(value, units))
        .map(
            shown ->
                row.kind() == SummaryRow.Kind.DEGREES
                    ? shown
                    : format(row).rounded((Double) shown).doubleValue());
  }

  private static Format format(SummaryRow row) {
    return switch (row.kind()) {
      case MASS, MASS_DIFFERENCE -> Format.MASS;
      case LENGTH -> Format.LENGTH;
      case DEGREES -> Format.NUMBER;
    };
  }

  /** A mass cannot be negative, a margin can. */
  private static Optional<Object> signedMass(double kg, UnitSystem units) {
    return Format.MASS
        .shown(Mass.of(Math.abs(kg), MassUnit.KILOGRAM), units)
        .map(size -> Math.signum(kg) * (Double) size);
  }
}
