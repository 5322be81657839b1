package sparewell.table;

import java.util.Optional;
import java.util.function.Function;
import sparewell.finding.Cell;
import sparewell.units.UnitSystem;

/**
 * One column of a result table.
 *
 * @param csvName name in CSV without unit suffix; empty for a column that only the sheet has
 * @param heading heading in the sheet without unit; empty for a column that only the CSV has
 * @param value the value of a row: any type that {@link Format#shown} knows
 * @param totalled whether the sheet shows a sum under the column
 * @param dashed whether the sheet shows a dash for nothing, so that the rest stands out
 * @param entry how the angler fills the row's cell; empty for a cell that only shows its value.
 *     What he typed before is the value: text, a number or a date, absent for a blank cell
 */
public record Column<R>(
    String csvName,
    String heading,
    Format format,
    String meaning,
    Function<R, ?> value,
    Function<R, Tone> tone,
    Function<R, Optional<Cell>> link,
    boolean totalled,
    boolean dashed,
    Function<R, Optional<Entry>> entry) {

  /** A column of blank cells to type into, in the sheet only; it is read back by its heading. */
  public static <R> Column<R> entry(String heading, String meaning, Entry entry) {
    return Format.NUMBER
        .<R>onSheet(heading, meaning, row -> Optional.empty())
        .entered(row -> Optional.of(entry));
  }

  public Column<R> entered(Function<R, Optional<Entry>> newEntry) {
    return new Column<>(
        csvName, heading, format, meaning, value, tone, link, totalled, dashed, newEntry);
  }

  public Column<R> valued(Function<R, ?> newValue) {
    return new Column<>(
        csvName, heading, format, meaning, newValue, tone, link, totalled, dashed, entry);
  }

  public Column<R> toned(Function<R, Tone> newTone) {
    return new Column<>(
        csvName, heading, format, meaning, value, newTone, link, totalled, dashed, entry);
  }

  public Column<R> linked(Function<R, Optional<Cell>> newLink) {
    return new Column<>(
        csvName, heading, format, meaning, value, tone, newLink, totalled, dashed, entry);
  }

  public Column<R> summed() {
    return new Column<>(csvName, heading, format, meaning, value, tone, link, true, dashed, entry);
  }

  /** Copy for numbers of at least 0, with a dash for those that would show as 0. */
  public Column<R> quiet() {
    return new Column<>(
        csvName, heading, format, meaning, value, tone, link, totalled, true, entry);
  }

  public String pattern(UnitSystem units) {
    return dashed ? format.quietPattern(units) : format.pattern(units);
  }

  public boolean inSheet() {
    return !heading.isEmpty();
  }

  public boolean inCsv() {
    return !csvName.isEmpty();
  }
}
