package sparewell.sheet;

import java.util.List;
import java.util.Optional;
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
    Table<Finding> table =
        new Table<>("input-checks.csv", "", columns(), findings, "Nothing to mend.");
    return new ReportSheet(NAME, answer(findings), List.of(new Block.Rows(table)));
  }

  /** The columns of a table of findings. */
  static List<Column<Finding>> columns() {
    return List.of(
        Column.<Finding>of(
                "severity",
                "Severity",
                Format.TEXT,
                "error = a row or value was left out or a limit is broken; warning = read under an"
                    + " assumption; note = worth knowing.",
                finding -> finding.severity().word())
            .toned(finding -> tone(finding.severity())),
        Column.of(
            "sheet", "Sheet", Format.TEXT, "Sheet it is about.", finding -> finding.at().sheet()),
        Column.<Finding>of(
                "cell",
                "Cell",
                Format.TEXT,
                "Cell it is about; click to go there. Empty for a whole sheet.",
                finding -> finding.at().reference())
            .linked(
                finding -> finding.at().row() == 0 ? Optional.empty() : Optional.of(finding.at())),
        Column.of("message", "What is wrong", Format.TEXT, "What is wrong.", Finding::message),
        Column.of(
            "done",
            "What was done",
            Format.TEXT,
            "What the analyser did about it.",
            Finding::done));
  }

  private static String answer(List<Finding> findings) {
    long errors = count(findings, Severity.ERROR);
    long warnings = count(findings, Severity.WARNING);
    if (errors + warnings == 0) {
      return "What needs mending in your sheets? Nothing: every row was read as it stands.";
    }
    return "What needs mending in your sheets? "
        + Phrase.count(errors, "error", "errors")
        + " (a row or value was left out, or a limit is broken) and "
        + Phrase.count(warnings, "warning", "warnings")
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
