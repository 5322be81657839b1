package sparewell.workbook.importing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewCell.Kind;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.read.BoundColumn;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Dates;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Numbers;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/** Converts texts of a file to cell values; what cannot be converted stays text for the reader. */
record ValueMaker(CsvTable from, TargetTable to, UnitSystem units, DateSystem dates) {
  private static final Pattern PLAIN = Pattern.compile("[+-]?(?:\\d+\\.?\\d*|\\.\\d+)");
  private static final Pattern WHOLE = Pattern.compile("0|[1-9]\\d{0,14}");

  /** Lone surrogates and non-characters, which XML cannot hold. */
  private static final Pattern NO_CHARACTER = Pattern.compile("[\\p{Cs}\\ufffe\\uffff]");

  private static final MathContext DIGITS = new MathContext(12);

  List<NewCell> values(CsvTable.Line line) {
    List<NewCell> values = new ArrayList<>();
    for (BoundColumn source : from.header().columns().values()) {
      String text = NO_CHARACTER.matcher(from.dated(line, source)).replaceAll("");
      Optional<BoundColumn> target = to.header().column(source.column().name());
      if (!text.isEmpty() && target.isPresent()) {
        values.add(value(text, source, target.get()));
      }
    }
    values.sort(Comparator.comparingInt(NewCell::column));
    return values;
  }

  private NewCell value(String text, BoundColumn source, BoundColumn target) {
    int column = target.index();
    RawCell cell = cell(text);
    Optional<NewCell> made =
        switch (source.column().kind()) {
          case TEXT, SIZE -> name(text, target);
          case DATE ->
              Dates.date(cell, DateSystem.FROM_1900, Remarks.NONE)
                  .map(
                      date ->
                          new NewCell(column, Kind.DATE, date.toString(), dates.dayNumber(date)));
          case HOURS -> number(column, Amounts.hours(cell(point(text)), Remarks.NONE));
          case MONEY ->
              number(
                  column,
                  Amounts.money(cell(point(text)), Remarks.NONE).map(BigDecimal::doubleValue));
          case ITEM_MASS -> Optional.of(mass(point(text), source, target));
          case YES_NO ->
              Words.yesNo(cell, Remarks.NONE).map(yes -> text(column, yes ? "yes" : "no"));
          case CHOICE ->
              Words.among(cell, source.column().choices()).map(word -> text(column, word));
          default -> count(column, point(text));
        };
    return made.orElseGet(() -> text(column, text));
  }

  private static NewCell text(int column, String text) {
    return new NewCell(column, Kind.TEXT, text, 0);
  }

  private static NewCell number(int column, double number) {
    return new NewCell(column, Kind.NUMBER, Numbers.plain(number), number);
  }

  private static RawCell cell(String text) {
    return RawCell.text(0, text);
  }

  /** Writes a name of digits as a number where the angler's last row does. */
  private Optional<NewCell> name(String text, BoundColumn target) {
    boolean number =
        WHOLE.matcher(text).matches()
            && !target.column().name().equals("Note")
            && to.numeric(target);
    return number
        ? Optional.of(number(target.index(), Double.parseDouble(text)))
        : Optional.empty();
  }

  /** Replaces a decimal comma by a point, in files with another delimiter. */
  private String point(String text) {
    if (from.delimiter() == ',' || !text.matches(".*\\d,\\d.*")) {
      return text;
    }
    String joined = text.replaceAll("(?<=\\d)[.\u00a0\u202f' ](?=\\d{3}(?:\\D|$))", "");
    return joined.replaceFirst("(?<=\\d),(?=\\d)", ".");
  }

  private static Optional<NewCell> number(int column, Optional<Double> value) {
    return value.map(number -> number(column, number));
  }

  private static Optional<NewCell> count(int column, String text) {
    return text.matches("[\\d.,]+")
        ? number(column, Amounts.number(cell(text), Remarks.NONE))
        : Optional.of(text(column, text));
  }

  /** Converts plain numbers to the unit of the sheet's header; keeps fractions and typed units. */
  private NewCell mass(String text, BoundColumn source, BoundColumn target) {
    MassUnit has = source.massUnit(units);
    MassUnit wants = target.massUnit(units);
    boolean plain = PLAIN.matcher(text).matches();
    if (plain && has == wants) {
      return number(target.index(), Double.parseDouble(text));
    }
    if (plain) {
      double converted = Double.parseDouble(text) * has.milligrams() / wants.milligrams();
      return number(target.index(), new BigDecimal(converted).round(DIGITS).doubleValue());
    }
    boolean ownUnit = !text.isEmpty() && Character.isLetter(text.charAt(text.length() - 1));
    return text(target.index(), has == wants || ownUnit ? text : text + " " + has.symbol());
  }

  /** Filled columns of the file that the sheet lacks. */
  List<InputColumn> homeless() {
    return from.header().columns().values().stream()
        .filter(c -> !c.column().name().equals("Note"))
        .filter(c -> to.header().column(c.column().name()).isEmpty())
        .filter(c -> from.lines().stream().anyMatch(l -> !Names.clean(l.at(c.index())).isEmpty()))
        .map(BoundColumn::column)
        .toList();
  }
}
