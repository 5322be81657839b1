package sparewell.finding;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A fault, an assumption or a fact that the angler should know.
 *
 * @param details the values that fill the code's texts, in their order; a {@link Cell} among them
 *     is another place that it is about
 */
public record Finding(Code code, Cell at, List<Object> details) {
  public Finding {
    details = List.copyOf(details);
  }

  public static Finding of(Code code, Cell at, Object... details) {
    return new Finding(code, at, List.of(details));
  }

  /** Copy with the columns of its places resolved; see {@link Cell#located}. */
  public Finding located(Map<String, Map<String, Integer>> columns) {
    return new Finding(
        code,
        at.located(columns),
        details.stream()
            .map(detail -> detail instanceof Cell to ? to.located(columns) : detail)
            .toList());
  }

  /** By the order of sheets, then row and column; findings of no sheet first, of others last. */
  public static Comparator<Finding> inOrder(List<String> sheets) {
    return Comparator.comparingInt((Finding finding) -> rank(finding.at().sheet(), sheets))
        .thenComparing(finding -> finding.at().sheet())
        .thenComparingInt(finding -> finding.at().row())
        .thenComparingInt(finding -> finding.at().column());
  }

  private static int rank(String sheet, List<String> sheets) {
    int at = sheets.indexOf(sheet);
    return sheet.isEmpty() ? -1 : at < 0 ? sheets.size() : at;
  }

  /** Describes the fault, in an angler's words. */
  public String message() {
    return String.format(Locale.ROOT, code.message(), shown());
  }

  /** Describes the consequence: what was left out or assumed. */
  public String done() {
    return String.format(Locale.ROOT, code.done(), shown());
  }

  private Object[] shown() {
    return details.stream().map(detail -> detail instanceof Cell to ? shown(to) : detail).toArray();
  }

  /** A place among the details: a row of the same sheet goes by its number. */
  private String shown(Cell to) {
    return to.column() == 0 && to.sheet().equals(at.sheet())
        ? "row " + to.row()
        : to.sheet() + " " + to.reference();
  }

  public Severity severity() {
    return code.severity();
  }
}
