package sparewell.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** All findings, gravest first, each linked to its cell. */
public final class InputChecksSheet {
  public static final String NAME = "Input checks";

  private InputChecksSheet() {}

  /** The sheet for these findings, which come in the order of the workbook. */
  public static ReportSheet of(List<Finding> findings) {
    Table<Finding> all =
        Columns.<Finding>of(NAME)
            .table(findings, columns(one -> one, Finding::message, Finding::done));
    Table<Folded> shown =
        Table.onSheet(
            "",
            columns(Folded::first, Folded::messageWithCells, Folded::done),
            Folded.of(Causes.first(findings)),
            "Nothing to mend.");
    return new ReportSheet(
        NAME, answer(findings), List.of(new Block.Rows(shown), new Block.FileOnly(all)));
  }

  /** The columns of a table of findings, one or several of a kind in a row. */
  private static <R> List<Column<R>> columns(
      Function<R, Finding> finding, Function<R, String> message, Function<R, String> done) {
    Columns<R> columns = Columns.of(NAME);
    return List.of(
        columns
            .column("severity", row -> finding.apply(row).severity().word())
            .toned(row -> tone(finding.apply(row).severity())),
        columns.column("sheet", row -> finding.apply(row).at().sheet()),
        columns
            .column("cell", row -> finding.apply(row).at().reference())
            .linked(row -> Optional.of(finding.apply(row).at()).filter(at -> at.row() > 0)),
        columns.column("message", message),
        columns.column("done", done));
  }

  private static String answer(List<Finding> findings) {
    long errors = count(findings, Severity.ERROR);
    long warnings = count(findings, Severity.WARNING);
    if (errors + warnings == 0) {
      return "What needs mending in your sheets? Nothing: every row was read as it stands.";
    }
    return Phrase.text(
        "What needs mending in your sheets? %s (a row or value was left out, or a limit is broken)"
            + " and %s (read under an assumption). %s, then run again.",
        Phrase.count(errors, "error"),
        Phrase.count(warnings, "warning"),
        errors == 0 ? "Mend what was taken wrongly" : "Mend the errors first");
  }

  private static long count(List<Finding> findings, Severity severity) {
    return findings.stream().filter(finding -> finding.severity() == severity).count();
  }

  private static Tone tone(Severity severity) {
    return switch (severity) {
      case ERROR -> Tone.BAD;
      case WARNING -> Tone.WATCH;
      case NOTE -> Tone.NONE;
    };
  }
}
