package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.save.SaveResult;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.Results;
import sparewell.table.Block;

/** What is printed about a workbook. */
final class Summary {
  private static final int WIDTH = 80;
  private static final int MOST_LINES = 22;

  private Summary() {}

  /** What to do now, and where the answers stand. */
  static List<String> of(Results results, SaveResult saved, Path folder) {
    List<String> lines = new ArrayList<>();
    lines.addAll(steps(ReportSheets.toDo(results)));
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
    if (results.findings().stream().anyMatch(f -> f.code() == Code.SIGNATURE_DROPPED)) {
      lines.add("The digital signature is gone from it, as asked.");
    }
    saved.backup().ifPresent(backup -> lines.add("Backup of what it was: " + backup + "."));
    return lines;
  }

  /** Every step; what belongs to a step only where all of it fits one screen. */
  static List<String> steps(List<Block.Line> toDo) {
    boolean fits = toDo.size() <= MOST_LINES;
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < toDo.size(); i++) {
      Block.Line line = toDo.get(i);
      boolean detail = isDetail(line);
      boolean detailed = i + 1 < toDo.size() && isDetail(toDo.get(i + 1));
      String text = line.text();
      if (!fits && !detail && detailed && text.endsWith(":") && line.link().isPresent()) {
        text =
            text.substring(0, text.length() - 1)
                + "; see the sheet '"
                + line.link().get().sheet()
                + "'.";
      }
      if (fits || !detail) {
        lines.addAll(Wrapping.lines(text, WIDTH));
      }
    }
    return lines;
  }

  private static boolean isDetail(Block.Line line) {
    return line.text().startsWith(" ");
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

  /** Steps and findings counted. */
  static String inShort(Results results) {
    long steps =
        ReportSheets.toDo(results).stream().filter(l -> l.text().matches("\\d+\\. .*")).count();
    return steps + " to do; " + counts(results.findings());
  }

  static String counts(List<Finding> findings) {
    List<String> parts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      long count = findings.stream().filter(f -> f.severity() == severity).count();
      parts.add(count + " " + severity.word() + (count == 1 ? "" : "s"));
    }
    return String.join(", ", parts);
  }
}
