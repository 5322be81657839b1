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
import sparewell.workbook.InputSheets;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.TypedChance;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Numbers;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/** Reads the settings; what is absent or cannot be used takes its standard value. */
record SettingsReader(SettingRows rows, ReadOptions options, Findings findings) {
  /** Width of US Letter, the wider usual paper; A4 has 210 mm. */
  private static final double WIDEST_PAPER_MM = 215.9;

  static Settings read(
      Optional<InputTable> table, DateSystem dates, ReadOptions options, Findings findings) {
    UnitSystem units = units(rows(table, UnitSystem.US, dates, new Findings()), new Findings());
    SettingRows rows = rows(table, units, dates, findings);
    return new SettingsReader(rows, options, findings).settings(units(rows, findings));
  }

  private static SettingRows rows(
      Optional<InputTable> table, UnitSystem units, DateSystem dates, Findings findings) {
    SettingRows rows = new SettingRows(InputSheets.SETTINGS, InputSheets.SETTING_ROWS);
    if (table.isPresent()) {
      for (RawRow raw : table.get().rows()) {
        rows.add(new Row(table.get(), raw, units, dates, findings));
      }
    }
    return rows;
  }

  private static UnitSystem units(SettingRows rows, Findings findings) {
    return rows.read(
            "Units",
            (c, r) ->
                Words.choice(plainUs(c), InputSheets.SETTING_ROWS.column("Units").choices(), r))
        .map(word -> word.equals("metric") ? UnitSystem.METRIC : UnitSystem.US)
        .orElse(UnitSystem.US);
  }

  private static RawCell plainUs(RawCell cell) {
    boolean dotted = cell.kind() == RawCell.Kind.TEXT && Names.fold(cell.text()).equals("u s");
    return dotted ? RawCell.text(cell.column(), "us") : cell;
  }

  private Settings settings(UnitSystem units) {
    Optional<TypedChance> given = options.chance();
    given.filter(TypedChance::isPercent).ifPresent(this::remarkPercent);
    Optional<LocalDate> asOf = rows.get("As of").flatMap(n -> n.row().date(n.value()));
    Optional<Double> chance = value("Chance wanted", Amounts::chance);
    Optional<BigDecimal> budget = value("Budget", Amounts::money);
    LocalDate analysed = options.asOf().or(() -> asOf).orElse(options.today());
    return new Settings(
        units,
        analysed,
        value("Carry at least", Amounts::pieces).orElseThrow(),
        stockCountedOn(analysed),
        given.map(TypedChance::probability).or(() -> chance).orElseThrow(),
        given.isPresent(),
        value("Planning hours", Amounts::hours).orElseThrow(),
        value("Planning days", Amounts::days).orElseThrow(),
        value("Lead time (days)", Amounts::number).orElseThrow(),
        options.budget().or(() -> budget),
        value("Currency", SettingsReader::currency).orElseThrow(),
        value("Fill factor", Amounts::number).orElseThrow(),
        sideTolerance(units),
        length("Reach worth"),
        value("Idle after (months)", Amounts::number).orElseThrow(),
        value("Half-life (months)", Amounts::number)
            .map(OptionalDouble::of)
            .orElse(OptionalDouble.empty()),
        labels());
  }

  private Optional<LocalDate> stockCountedOn(LocalDate asOf) {
    Optional<SettingRows.Named> named = rows.get("Stock counted on");
    Optional<LocalDate> date = named.flatMap(n -> n.row().date(n.value()));
    date.filter(day -> day.isAfter(asOf))
        .ifPresent(day -> named.get().row().say("Value", Code.COUNTED_IN_FUTURE, day, asOf));
    return date;
  }

  /** Value of the workbook, else the standard; absent where the standard is a word. */
  private <T> Optional<T> value(String name, BiFunction<RawCell, Remarks, Optional<T>> parser) {
    return rows.read(name, parser).or(() -> parser.apply(standard(name), Remarks.NONE));
  }

  private static RawCell standard(String name) {
    return RawCell.text(0, InputSheets.SETTING_ROWS.column(name).standard());
  }

  private void remarkPercent(TypedChance chance) {
    findings.add(
        Code.CHANCE_OPTION_PERCENT,
        Cell.NOWHERE,
        Numbers.plain(chance.typed()),
        Numbers.plain(chance.probability()));
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
  private Optional<Settings.SideTolerance> sideTolerance(UnitSystem units) {
    return rows.get("Side tolerance")
        .flatMap(
            n ->
                n.row()
                    .read(n.value(), (c, r) -> Moments.read(c, n.value().unit(), units, r))
                    .map(kgM -> new Settings.SideTolerance(kgM, cell(n))));
  }

  private static Cell cell(SettingRows.Named named) {
    return named.row().origin().atColumn(named.value().index());
  }

  private Settings.LabelPage labels() {
    Length width = length("Label width");
    int across = value("Labels across", Amounts::pieces).orElseThrow();
    int fitting = (int) Math.max(1, WIDEST_PAPER_MM / width.in(LengthUnit.MILLIMETRE));
    if (across > fitting) {
      Cell at =
          rows.get("Labels across")
              .or(() -> rows.get("Label width"))
              .map(SettingsReader::cell)
              .orElse(Cell.NOWHERE);
      String millimetres = Numbers.plain(width.in(LengthUnit.MILLIMETRE));
      findings.add(Code.LABELS_WIDER_THAN_PAPER, at, across, millimetres, fitting);
    }
    return new Settings.LabelPage(
        width,
        length("Label height"),
        Math.min(across, fitting),
        value("Labels down", Amounts::pieces).orElseThrow());
  }

  private Length length(String name) {
    return rows.get(name)
        .flatMap(named -> named.row().length(named.value()))
        .or(() -> Amounts.length(standard(name), LengthUnit.MILLIMETRE, Remarks.NONE))
        .orElseThrow();
  }
}
