package sparewell.workbook.read;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Settings;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputRows;
import sparewell.workbook.InputSheets;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Numbers;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/** Reads the settings; what is absent or cannot be used takes its standard value. */
final class SettingsReader {
  private static final double MOST_MONTHS = 1200;
  private static final int MOST_LABELS = 100;

  private final SettingRows rows;
  private final ReadOptions options;
  private final Findings findings;

  private SettingsReader(SettingRows rows, ReadOptions options, Findings findings) {
    this.rows = rows;
    this.options = options;
    this.findings = findings;
  }

  static Settings read(
      Optional<InputTable> table, DateSystem dates, ReadOptions options, Findings findings) {
    UnitSystem units = units(rows(table, UnitSystem.US, dates, new Findings()), new Findings());
    SettingRows rows = rows(table, units, dates, findings);
    return new SettingsReader(rows, options, findings).settings(units(rows, findings));
  }

  private static SettingRows rows(
      Optional<InputTable> table, UnitSystem units, DateSystem dates, Findings findings) {
    SettingRows rows = new SettingRows(InputSheets.SETTINGS, InputRows.SETTINGS);
    if (table.isPresent()) {
      for (RawRow raw : table.get().rows()) {
        rows.add(new Row(table.get(), raw, Units.of(units), dates, findings));
      }
    }
    return rows;
  }

  private static UnitSystem units(SettingRows rows, Findings findings) {
    return rows.get(InputRows.UNITS)
        .flatMap(
            n ->
                n.row()
                    .read(
                        n.value(),
                        (c, r) -> Words.choice(plainUs(c), n.value().column().choices(), r)))
        .map(word -> word.equals("metric") ? UnitSystem.METRIC : UnitSystem.US)
        .orElse(UnitSystem.US);
  }

  /** U.S. is us. */
  private static RawCell plainUs(RawCell cell) {
    boolean dotted = cell.kind() == RawCell.Kind.TEXT && Names.fold(cell.text()).equals("u s");
    return dotted ? new RawCell(cell.column(), cell.kind(), "us", 0, cell.shape(), false) : cell;
  }

  private Settings settings(UnitSystem units) {
    Optional<Double> asked = options.chance().map(this::asProbability);
    Optional<Double> chance = value(InputRows.CHANCE_WANTED, Amounts::chance);
    Optional<LocalDate> asOf = rows.get(InputRows.AS_OF).flatMap(n -> n.row().date(n.value()));
    return new Settings(
        units,
        options.asOf().or(() -> asOf).orElse(options.today()),
        value(InputRows.CARRY_AT_LEAST, Amounts::pieces)
            .orElse((int) usual(InputRows.CARRY_AT_LEAST)),
        asked.or(() -> chance).orElse(usual(InputRows.CHANCE_WANTED)),
        asked.isPresent(),
        value(InputRows.PLANNING_HOURS, (c, r) -> Row.positive(Amounts.hours(c, r), r))
            .orElse(usual(InputRows.PLANNING_HOURS)),
        value(InputRows.PLANNING_DAYS, Amounts::days).orElse(usual(InputRows.PLANNING_DAYS)),
        budget(),
        value(InputRows.CURRENCY, SettingsReader::currency).orElse(InputRows.CURRENCY.standard()),
        value(
                InputRows.FILL_FACTOR,
                (c, r) -> within(Amounts.number(c, r), 1, "above 0, at most 1", r))
            .orElse(usual(InputRows.FILL_FACTOR)),
        sideTolerance(units),
        value(InputRows.IDLE_AFTER, SettingsReader::months).orElse(usual(InputRows.IDLE_AFTER)),
        value(InputRows.HALF_LIFE, SettingsReader::months)
            .map(OptionalDouble::of)
            .orElse(OptionalDouble.empty()),
        new Settings.LabelPage(
            label(InputRows.LABEL_WIDTH),
            label(InputRows.LABEL_HEIGHT),
            labels(InputRows.LABELS_ACROSS),
            labels(InputRows.LABELS_DOWN)));
  }

  /** The number that a blank cell stands for, as the setting is declared; its unit is left out. */
  private static double usual(InputColumn column) {
    return Double.parseDouble(column.standard().split(" ", 2)[0]);
  }

  private <T> Optional<T> value(
      InputColumn column, BiFunction<RawCell, Remarks, Optional<T>> parser) {
    return rows.get(column).flatMap(named -> named.row().read(named.value(), parser));
  }

  private double asProbability(double asked) {
    if (asked >= 50 && asked <= 99.9) {
      double probability = new BigDecimal(Double.toString(asked)).movePointLeft(2).doubleValue();
      findings.add(
          Code.CHANCE_OPTION_PERCENT,
          Cell.NOWHERE,
          Numbers.plain(asked),
          Numbers.plain(probability));
      return probability;
    }
    return asked;
  }

  private Optional<BigDecimal> budget() {
    Optional<BigDecimal> set = value(InputRows.BUDGET, Amounts::money);
    return options.budget().or(() -> set);
  }

  private static Optional<Double> months(RawCell cell, Remarks remarks) {
    return within(Amounts.number(cell, remarks), MOST_MONTHS, "above 0, at most 1200", remarks);
  }

  private static Optional<Double> within(
      Optional<Double> value, double most, String allowed, Remarks remarks) {
    if (value.isPresent() && (value.get() <= 0 || value.get() > most)) {
      remarks.unusable(Code.OUT_OF_RANGE, "it must be " + allowed);
      return Optional.empty();
    }
    return value;
  }

  private static Optional<String> currency(RawCell cell, Remarks remarks) {
    String code = Words.text(cell).toUpperCase(Locale.ROOT);
    try {
      return Optional.of(Currency.getInstance(code).getCurrencyCode());
    } catch (IllegalArgumentException e) {
      remarks.unusable(Code.OUT_OF_RANGE, "a currency has a code of three letters, like USD");
      return Optional.empty();
    }
  }

  /** In kg m; the angler gives lb in or kg cm, or names another pair of units. */
  private OptionalDouble sideTolerance(UnitSystem units) {
    Optional<Double> moment =
        rows.get(InputRows.SIDE_TOLERANCE)
            .flatMap(
                n ->
                    n.row().read(n.value(), (c, r) -> Moments.read(c, n.value().unit(), units, r)));
    return moment.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private Length label(InputColumn column) {
    return rows.get(column)
        .flatMap(named -> named.row().length(named.value()))
        .orElse(Length.of(usual(column), LengthUnit.MILLIMETRE));
  }

  private int labels(InputColumn column) {
    return value(
            column,
            (c, r) -> {
              Optional<Integer> count = Amounts.pieces(c, r);
              if (count.isPresent() && (count.get() < 1 || count.get() > MOST_LABELS)) {
                r.unusable(Code.OUT_OF_RANGE, "it must be 1 to 100");
                return Optional.empty();
              }
              return count;
            })
        .orElse((int) usual(column));
  }
}
