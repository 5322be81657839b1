package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.save.SaveResult;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.Results;
import sparewell.table.Block;

/** What is printed about a workbook. */
final class Summary {
  private static final int MOST_LINES = 14;

  private Summary() {}

  /** What to do now, and where the answers stand. */
  static List<String> of(Results results, SaveResult saved, Path folder) {
    List<String> lines = new ArrayList<>();
    List<Block.Line> toDo = ReportSheets.toDo(results);
    toDo.stream().limit(MOST_LINES).map(Block.Line::text).forEach(lines::add);
    if (toDo.size() > MOST_LINES) {
      lines.add("     … and more on the sheet '" + ReportSheets.FRONT + "'");
    }
    lines.add("");
    lines.add("Findings: " + counts(results.findings()) + ".");
    lines.add(
        "Written: "
            + saved.file()
            + " (open it at '"
            + ReportSheets.FRONT
            + "'), CSV files in "
            + folder
            + ".");
    saved.backup().ifPresent(backup -> lines.add("Backup of what it was: " + backup + "."));
    return lines;
  }

  /** Every finding on a line. */
  static List<String> ofFindings(Path book, Results results) {
    List<String> lines = new ArrayList<>();
    for (Finding finding : results.findings()) {
      String place = finding.at().sheet();
      String cell = finding.at().reference();
      lines.add(
          finding.severity().word()
              + (place.isEmpty() ? "" : ", " + place + (cell.isEmpty() ? "" : " " + cell))
              + ": "
              + finding.message()
              + " — "
              + finding.done());
    }
    lines.add(book + ": " + counts(results.findings()) + ". Nothing was written.");
    return lines;
  }

  private static String counts(List<Finding> findings) {
    List<String> parts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      long count = findings.stream().filter(f -> f.severity() == severity).count();
      parts.add(count + " " + severity.word() + (count == 1 ? "" : "s"));
    }
    return String.join(", ", parts);
  }
}
