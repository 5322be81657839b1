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
  /** Tab of the sheet. */
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
        new Table<>(
            "",
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
        Column.<R>of(
                "severity",
                "Severity",
                Format.TEXT,
                "error = a row or value was left out or a limit is broken; warning = read under an"
                    + " assumption; note = worth knowing.",
                row -> finding.apply(row).severity().word())
            .toned(row -> tone(finding.apply(row).severity())),
        Column.of(
            "sheet",
            "Sheet",
            Format.TEXT,
            "Sheet it is about.",
            row -> finding.apply(row).at().sheet()),
        Column.<R>of(
                "cell",
                "Cell",
                Format.TEXT,
                "Cell it is about, of several the first; click to go there. Empty for a whole"
                    + " sheet.",
                row -> finding.apply(row).at().reference())
            .linked(row -> Optional.of(finding.apply(row).at()).filter(at -> at.row() > 0)),
        Column.of("message", "What is wrong", Format.TEXT, "What is wrong.", message),
        Column.of("done", "What was done", Format.TEXT, "What the analyser did about it.", done));
  }

  private static String answer(List<Finding> findings) {
    long errors = count(findings, Severity.ERROR);
    long warnings = count(findings, Severity.WARNING);
    if (errors + warnings == 0) {
      return "What needs mending in your sheets? Nothing: every row was read as it stands.";
    }
    return "What needs mending in your sheets? "
        + Phrase.count(errors, "error")
        + " (a row or value was left out, or a limit is broken) and "
        + Phrase.count(warnings, "warning")
        + " (read under an assumption). Mend the errors first, then run again.";
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
