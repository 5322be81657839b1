package sparewell.sheet;

import java.util.List;
import java.util.Optional;
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
  private static final Columns<Folded> COLUMNS = Columns.of(NAME);

  private InputChecksSheet() {}

  public static ReportSheet of(List<Finding> findings) {
    List<Folded> all = findings.stream().map(finding -> new Folded(List.of(finding))).toList();
    Table<Folded> shown =
        new Table<>("", "", columns(), Folded.of(Causes.first(findings)), "Nothing to mend.");
    return new ReportSheet(
        NAME,
        answer(findings),
        List.of(new Block.Rows(shown), new Block.FileOnly(COLUMNS.table(all, columns()))));
  }

  private static List<Column<Folded>> columns() {
    return List.of(
        COLUMNS
            .column("severity", row -> row.first().severity().word())
            .toned(row -> tone(row.first().severity())),
        COLUMNS.column("sheet", row -> row.first().at().sheet()),
        COLUMNS
            .column("cell", row -> row.first().at().reference())
            .linked(row -> Optional.of(row.first().at()).filter(at -> at.row() > 0)),
        COLUMNS.column("message", Folded::messageWithCells),
        COLUMNS.column("done", Folded::done));
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
