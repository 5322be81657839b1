package sparewell.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.finding.Finding;
import sparewell.finding.Severity;

/** A finding, or all of its kind about one sheet: at least one. */
record Folded(List<Finding> all) {
  /** Fewer are shown one by one. */
  private static final int FEWEST = 3;

  private static final int MOST_CELLS = 12;

  /** Findings of one kind about one sheet folded into their first, where there are several. */
  static List<Folded> of(List<Finding> findings) {
    Map<List<Object>, List<Finding>> kinds = new LinkedHashMap<>();
    for (Finding finding : findings) {
      if (folds(finding)) {
        kinds.computeIfAbsent(kind(finding), k -> new ArrayList<>()).add(finding);
      }
    }
    List<Folded> rows = new ArrayList<>();
    for (Finding finding : findings) {
      List<Finding> alike = kinds.getOrDefault(kind(finding), List.of());
      if (alike.size() < FEWEST) {
        rows.add(new Folded(List.of(finding)));
      } else if (alike.get(0) == finding) {
        rows.add(new Folded(alike));
      }
    }
    return rows;
  }

  private static boolean folds(Finding finding) {
    return finding.severity() == Severity.NOTE
        || !finding.code().several().isEmpty()
        || Causes.follows(finding);
  }

  private static List<Object> kind(Finding finding) {
    Object about = Causes.follows(finding) ? Causes.cause(finding) : "";
    return List.of(finding.code(), finding.at().sheet(), about);
  }

  Finding first() {
    return all.get(0);
  }

  String message() {
    if (all.size() == 1) {
      return first().message();
    }
    if (Causes.follows(first())) {
      return all.size() + " rows wait for one that was left out: " + waitsFor();
    }
    String several = first().code().several();
    return several.isEmpty()
        ? first().message() + "; and " + (all.size() - 1) + " more like it"
        : all.size() + " " + several;
  }

  private String waitsFor() {
    Cell cause = Causes.cause(first());
    return cause.sheet() + " row " + cause.row() + "; correct that row first";
  }

  /** The same with the cells of several. */
  String messageWithCells() {
    String cells =
        all.stream()
            .map(finding -> finding.at().reference())
            .filter(cell -> !cell.isEmpty())
            .limit(MOST_CELLS)
            .collect(Collectors.joining(", "));
    if (all.size() == 1 || cells.isEmpty()) {
      return message();
    }
    int more = all.size() - MOST_CELLS;
    return message() + " (" + cells + (more > 0 ? " and " + more + " more)" : ")");
  }

  String done() {
    boolean same = all.stream().map(Finding::done).distinct().count() == 1;
    return first().done() + (same ? "" : "; the others in the same way");
  }
}
