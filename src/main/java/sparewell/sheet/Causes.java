package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;

/** Tells errors that cause others from those that go away with them. */
final class Causes {
  private final Map<Cell, List<Cell>> waiting = new HashMap<>(); // rows by the row they name

  private Causes(List<Finding> findings) {
    for (Finding finding : findings) {
      if (follows(finding)) {
        waiting.computeIfAbsent(row(cause(finding)), at -> new ArrayList<>()).add(finding.at());
      }
    }
  }

  /** Gravest first as given, causes before what follows, and those most rows wait for first. */
  static List<Finding> first(List<Finding> findings) {
    Causes causes = new Causes(findings);
    return findings.stream()
        .sorted(
            Comparator.comparing(Finding::severity)
                .thenComparing(Causes::follows)
                .thenComparing(finding -> -causes.waitingFor(finding)))
        .toList();
  }

  /** True for a row that is only left out because one that it names was. */
  static boolean follows(Finding finding) {
    return finding.code() == Code.LEFT_OUT_KEY;
  }

  /** The row whose own error a finding follows from. */
  static Cell cause(Finding finding) {
    return finding.details().stream()
        .filter(Cell.class::isInstance)
        .map(Cell.class::cast)
        .findFirst()
        .orElse(finding.at());
  }

  private int waitingFor(Finding finding) {
    Set<Cell> seen = new HashSet<>();
    count(row(finding.at()), seen);
    return seen.size() - 1;
  }

  private void count(Cell row, Set<Cell> seen) {
    if (seen.add(row)) {
      waiting.getOrDefault(row, List.of()).forEach(at -> count(row(at), seen));
    }
  }

  private static Cell row(Cell at) {
    return new Cell(at.sheet(), at.row(), 0);
  }
}
