package sparewell.workbook.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.Range;
import sparewell.workbook.grid.DateSystem;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.grid.RawRow;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Dates;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/**
 * One row of an input sheet, read cell by cell. Every fault becomes a finding; the row is left out
 * only after all its cells were tried.
 */
final class Row {
  private static final String ROW_LEFT_OUT = "row left out";
  private static final RawCell BLANK = RawCell.of(0, RawCell.Kind.UNCOMPUTED, "");

  private final InputTable table;
  private final RawRow raw;
  private final UnitSystem units;
  private final DateSystem dates;
  private final Findings findings;
  private boolean failed;

  Row(InputTable table, RawRow raw, UnitSystem units, DateSystem dates, Findings findings) {
    this.table = table;
    this.raw = raw;
    this.units = units;
    this.dates = dates;
    this.findings = findings;
  }

  boolean failed() {
    return failed;
  }

  Cell origin() {
    return new Cell(table.name(), raw.number(), 0);
  }

  /** Place of a column's cell; the row where the sheet lacks the column. */
  Cell at(String column) {
    return origin().atColumn(table.column(column).map(BoundColumn::index).orElse(0));
  }

  BoundColumn column(String name) {
    return table.column(name).orElseThrow();
  }

  boolean isBlank(String column) {
    return table.column(column).flatMap(bound -> raw.at(bound.index())).isEmpty();
  }

  Optional<RawCell> cell(int column) {
    return raw.at(column);
  }

  Optional<String> text(String column) {
    return read(column, this::text);
  }

  Optional<String> textOrDate(String column) {
    return read(column, Row::clean);
  }

  Optional<String> size(String column) {
    return read(
        column,
        (cell, remarks) -> {
          Optional<String> size = filled(Words.size(cell, remarks));
          size.ifPresent(text -> remarkControls(cell, text, remarks));
          return size;
        });
  }

  private Optional<String> text(RawCell cell, Remarks remarks) {
    Optional<String> text = clean(cell, remarks);
    if (cell.kind() == RawCell.Kind.DATE) {
      text.ifPresent(date -> remarks.assumed(Code.DATE_AS_NAME, date));
    }
    return text;
  }

  private static Optional<String> clean(RawCell cell, Remarks remarks) {
    Optional<String> text = filled(Words.text(cell));
    text.ifPresent(t -> remarkControls(cell, t, remarks));
    return text;
  }

  private static void remarkControls(RawCell cell, String readAs, Remarks remarks) {
    if (cell.kind() == RawCell.Kind.TEXT && Names.hasControls(cell.text())) {
      remarks.assumed(Code.CONTROL_CHARACTERS, readAs);
    }
  }

  private static Optional<String> filled(String text) {
    return Optional.of(text).filter(t -> !t.isEmpty());
  }

  Optional<Mass> mass(String column) {
    return table
        .column(column)
        .flatMap(bound -> read(bound, (c, r) -> Amounts.mass(c, bound.massUnit(units), r)));
  }

  Optional<Mass> someMass(BoundColumn bound) {
    return read(
        bound,
        (c, r) -> positive(Amounts.mass(c, bound.massUnit(units), r), m -> m.milligrams(), r));
  }

  Optional<Length> length(String column) {
    return table.column(column).flatMap(this::length);
  }

  Optional<Length> length(BoundColumn bound) {
    return read(bound, (c, r) -> Amounts.length(c, bound.lengthUnit(units), r));
  }

  Optional<Length> position(String column) {
    return table
        .column(column)
        .flatMap(bound -> read(bound, (c, r) -> Amounts.position(c, bound.lengthUnit(units), r)));
  }

  <N extends Number> Optional<N> some(
      String column, BiFunction<RawCell, Remarks, Optional<N>> parser) {
    return read(column, (c, r) -> positive(parser.apply(c, r), Number::doubleValue, r));
  }

  Optional<LocalDate> date(String column) {
    return read(column, (cell, remarks) -> Dates.date(cell, dates, remarks));
  }

  Optional<LocalDate> date(BoundColumn bound) {
    return read(bound, (cell, remarks) -> Dates.date(cell, dates, remarks));
  }

  boolean yes(String column) {
    return read(column, Words::yesNo).orElse(false);
  }

  Optional<String> choice(String column) {
    return table
        .column(column)
        .flatMap(bound -> read(bound, (c, r) -> Words.choice(c, bound.column().choices(), r)));
  }

  private static <T> Optional<T> positive(
      Optional<T> value, ToDoubleFunction<T> amount, Remarks remarks) {
    if (value.isPresent() && amount.applyAsDouble(value.get()) <= 0) {
      remarks.unusable(Code.NOT_POSITIVE, "");
      return Optional.empty();
    }
    return value;
  }

  /** Name that another sheet defines, as spelled there. */
  Optional<String> key(String column, Keys keys) {
    return read(
        column,
        (cell, remarks) -> {
          Optional<String> text = clean(cell, remarks);
          Optional<String> known = text.flatMap(keys::find);
          if (text.isPresent() && known.isEmpty()) {
            unknown(text.get(), keys, remarks);
          }
          return known;
        });
  }

  Optional<String> near(String column, Keys keys) {
    return table
        .column(column)
        .flatMap(bound -> raw.at(bound.index()))
        .map(Words::text)
        .flatMap(keys::near);
  }

  /** Remarks that a name is not known, or that the row defining it was left out. */
  static void unknown(String text, Keys keys, Remarks remarks) {
    Optional<Cell> dropped = keys.leftOut(text);
    if (dropped.isPresent()) {
      remarks.unusable(Code.LEFT_OUT_KEY, dropped.get());
    } else {
      String meant =
          keys.near(text)
              .map(near -> "; did you mean '" + near + "'?")
              .orElse("; correct it here, or add it there");
      remarks.unusable(Code.UNKNOWN_KEY, keys.where + meant);
    }
  }

  /** Reads the cell of a declared column; a blank one is a fault only where it is required. */
  <T> Optional<T> read(String column, BiFunction<RawCell, Remarks, Optional<T>> parser) {
    return table.column(column).flatMap(bound -> read(bound, parser));
  }

  <T> Optional<T> read(BoundColumn bound, BiFunction<RawCell, Remarks, Optional<T>> parser) {
    return read(bound, consequence(bound.column()), bound.column().standardForBad(), parser);
  }

  /** Reads a required cell whose faults have another consequence than the loss of the row. */
  <T> Optional<T> readSparing(
      String column, String done, BiFunction<RawCell, Remarks, Optional<T>> parser) {
    return table.column(column).flatMap(bound -> read(bound, done, true, parser));
  }

  private <T> Optional<T> read(
      BoundColumn bound,
      String done,
      boolean spared,
      BiFunction<RawCell, Remarks, Optional<T>> parser) {
    RawCell cell = raw.at(bound.index()).orElse(BLANK);
    Remarks remarks = new At(this, bound, cell, done, spared);
    if (cell.kind() == RawCell.Kind.ERROR) {
      remarks.unusable(Code.ERROR_VALUE, "");
    } else if (cell.kind() == RawCell.Kind.DAMAGED) {
      remarks.unusable(Code.DAMAGED_CELL, "");
    } else if (holdsAnything(cell)) {
      return parser.apply(cell, remarks).filter(v -> allowed(v, bound.column(), remarks));
    } else if (bound.column().required()) {
      remarks.unusable(Code.REQUIRED_BLANK, "");
    }
    return Optional.empty();
  }

  /** Returns whether a value lies in its column's range, if it has one; remarked where not. */
  private static boolean allowed(Object value, InputColumn column, Remarks remarks) {
    Optional<Range> range = column.range();
    if (range.isEmpty() || range.get().holds(amount(value, range.get().unit()))) {
      return true;
    }
    remarks.unusable(Code.OUT_OF_RANGE, "it must be " + range.get().words());
    return false;
  }

  private static double amount(Object value, String unit) {
    if (value instanceof Length length) {
      return length.in(LengthUnit.ofSymbol(unit).orElseThrow());
    }
    if (value instanceof Mass mass) {
      return mass.in(MassUnit.ofSymbol(unit).orElseThrow());
    }
    return ((Number) value).doubleValue();
  }

  private static boolean holdsAnything(RawCell cell) {
    return cell.kind() == RawCell.Kind.TEXT
        ? !Words.text(cell).isEmpty()
        : cell.kind() != RawCell.Kind.UNCOMPUTED;
  }

  private static String consequence(InputColumn column) {
    if (!column.standardForBad()) {
      return ROW_LEFT_OUT;
    }
    return column.standard().isEmpty()
        ? "value left out"
        : "value left out, as if blank (" + column.standard() + ")";
  }

  /** Adds a finding about a cell of this row; an error costs the row. */
  void say(String column, Code code, Object... details) {
    findings.add(code, at(column), details);
  }

  /** Adds a finding on a text that probably stands for another; {@code done} about it. */
  void sayDidYouMean(String column, String text, String done, String other) {
    say(column, Code.DID_YOU_MEAN, text, column, done, other);
  }

  /** Adds a finding that costs the row. */
  void leaveOut(String column, Code code, Object content, Object... more) {
    List<Object> details = new ArrayList<>(List.of(content, column, ROW_LEFT_OUT));
    details.addAll(List.of(more));
    findings.add(code, at(column), details.toArray());
    failed = true;
  }

  /** Turns remarks on a cell into findings; where {@code spared}, faults do not cost the row. */
  private record At(Row row, BoundColumn bound, RawCell cell, String done, boolean spared)
      implements Remarks {

    @Override
    public void unusable(Code code, Object more) {
      add(code, done, more);
      row.failed |= !spared;
    }

    @Override
    public void assumed(Code code, String readAs) {
      add(code, readAs, String.join(", ", bound.column().choices()));
    }

    private void add(Code code, String consequence, Object more) {
      row.findings.add(
          code,
          row.origin().atColumn(bound.index()),
          Words.text(cell),
          bound.header(),
          consequence,
          more);
    }
  }
}
