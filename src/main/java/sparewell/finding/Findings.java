package sparewell.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Collects findings, each once. Safe for threads that read several sheets at a time; the order of
 * findings from different sheets is then arbitrary.
 */
public final class Findings {
  private static final int MOST_NOTES = 50;

  private final Set<Finding> all = new LinkedHashSet<>();

  public synchronized void add(Code code, Cell at, Object... details) {
    all.add(Finding.of(code, at, details));
  }

  public synchronized void addAll(List<Finding> more) {
    all.addAll(more);
  }

  public synchronized List<Finding> list() {
    return List.copyOf(all);
  }

  /** Sorts by sheet, row and column; of a kind of note in a sheet, those beyond 50 are counted. */
  public static List<Finding> inOrder(List<Finding> findings, List<String> sheetOrder) {
    List<Finding> sorted = new ArrayList<>(findings);
    sorted.sort(Finding.inOrder(sheetOrder));
    Map<List<Object>, List<Finding>> kinds = new LinkedHashMap<>();
    List<Finding> kept = new ArrayList<>();
    for (Finding finding : sorted) {
      List<Finding> kind =
          kinds.computeIfAbsent(
              List.of(finding.code(), finding.at().sheet()), k -> new ArrayList<>());
      kind.add(finding);
      if (finding.severity() != Severity.NOTE || kind.size() <= MOST_NOTES) {
        kept.add(finding);
      }
    }
    for (List<Finding> kind : kinds.values()) {
      Finding last = kind.get(kind.size() - 1);
      if (last.severity() == Severity.NOTE && kind.size() > MOST_NOTES) {
        kept.add(
            Finding.of(Code.MORE_LIKE_THIS, last.at(), kind.size() - MOST_NOTES, last.code().id()));
      }
    }
    kept.sort(Finding.inOrder(sheetOrder));
    return kept;
  }
}
