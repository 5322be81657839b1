package sparewell.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
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
        new Table<>(
            "input-checks.csv",
            "",
            columns(one -> one, Finding::message, Finding::done),
            findings,
            "");
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
    return List.of(
        Format.TEXT
            .<R>column(
                "severity",
                "Severity",
                "error = a row or value was left out or a limit is broken; warning = read under an"
                    + " assumption; note = worth knowing.",
                row -> finding.apply(row).severity().word())
            .toned(row -> tone(finding.apply(row).severity())),
        Format.TEXT.column(
            "sheet", "Sheet", "Sheet it is about.", row -> finding.apply(row).at().sheet()),
        Format.TEXT
            .<R>column(
                "cell",
                "Cell",
                "Cell it is about, of several the first; click to go there. Empty for a whole"
                    + " sheet.",
                row -> finding.apply(row).at().reference())
            .linked(row -> Optional.of(finding.apply(row).at()).filter(at -> at.row() > 0)),
        Format.TEXT.column("message", "What is wrong", "What is wrong.", message),
        Format.TEXT.column("done", "What was done", "What the analyser did about it.", done));
  }

  private static String answer(List<Finding> findings) {
    long errors = count(findings, Severity.ERROR);
    long warnings = count(findings, Severity.WARNING);
    if (errors + warnings == 0) {
      return "What needs mending in your sheets? Nothing: every row was read as it stands.";
    }
    return Phrase.text(
        "What needs mending in your sheets? %s (a row or value was left out, or a limit is broken)"
            + " and %s (read under an assumption). Mend the errors first, then run again.",
        Phrase.count(errors, "error"), Phrase.count(warnings, "warning"));
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
