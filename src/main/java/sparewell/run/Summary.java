package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.ReportSheets.Report;
import sparewell.sheet.Results;
import sparewell.sheet.SeasonPlanSheet;
import sparewell.sheet.Step;
import sparewell.table.Block;

/** Words printed about a workbook. */
final class Summary {
  private static final int MOST_LINES = 22;

  private Summary() {}

  /** The steps to take now, and where the answers stand. */
  static List<String> of(
      Report report, Path written, Optional<Path> backup, Path folder, int columns) {
    Results results = report.results();
    List<String> lines = new ArrayList<>(steps(results, report.toDo(), columns));
    lines.add("");
    lines.add("Findings: " + counts(results.findings()) + ".");
    lines.add(
        "Written: %s (open it at '%s'), CSV files in %s."
            .formatted(written, ReportSheets.FRONT, folder));
    if (results.findings().stream().anyMatch(f -> f.code() == Code.SIGNATURE_DROPPED)) {
      lines.add("The digital signature is gone from it, as asked.");
    }
    backup.ifPresent(kept -> lines.add("Backup of what it was: " + kept + "."));
    return lines;
  }

  /** Every step; what belongs to a step only where all of it fits one screen. */
  static List<String> steps(Results results, List<Step> toDo, int columns) {
    List<String> all = new ArrayList<>();
    Step.lines(toDo, results).forEach(line -> all.addAll(Wrapping.lines(placed(line), columns)));
    if (all.size() <= MOST_LINES) {
      return all;
    }
    List<String> lines = new ArrayList<>(Wrapping.lines(Step.TITLE, columns));
    for (int i = 0; i < toDo.size(); i++) {
      Step step = toDo.get(i);
      String more =
          step.details().isEmpty() || step.link().isEmpty()
              ? "."
              : "; see the sheet '" + step.link().get().sheet() + "'.";
      lines.addAll(Wrapping.lines((i + 1) + ". " + step.text() + more, columns));
    }
    SeasonPlanSheet.nextOrder(results, false)
        .ifPresent(order -> lines.addAll(Wrapping.lines(order, columns)));
    return lines;
  }

  /** A line of the front page; where it is about a cell of the angler's own, with that cell. */
  private static String placed(Block.Line line) {
    return line.text()
        + line.link()
            .filter(at -> at.row() > 0 && !ReportSheets.names().contains(at.sheet()))
            .map(at -> " (" + at.sheet() + " " + at.reference() + ")")
            .orElse("");
  }

  /** Every finding on a line, the gravest last: what comes last stays on the screen. */
  static List<String> ofFindings(Path book, Results results) {
    List<String> lines = new ArrayList<>();
    List<Finding> gravestLast = new ArrayList<>(results.findings());
    gravestLast.sort(Comparator.comparing(Finding::severity).reversed());
    for (Finding finding : gravestLast) {
      String place = finding.at().sheet();
      String cell = finding.at().reference();
      lines.add(
          finding.severity().word()
              + (place.isEmpty() ? "" : ", " + place + (cell.isEmpty() ? "" : " " + cell))
              + ": %s — %s".formatted(finding.message(), finding.done()));
    }
    lines.add(book + ": " + counts(results.findings()) + ". Nothing was written.");
    return lines;
  }

  static String inShort(Results results, List<Step> toDo) {
    return toDo.size() + " to do; " + counts(results.findings());
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
