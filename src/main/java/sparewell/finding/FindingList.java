package sparewell.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Sorts findings and shortens long runs of the same note. */
public final class FindingList {
  private static final int MOST_NOTES = 50;

  private FindingList() {}

  /**
   * Sorts by sheet, row and column; of each kind of note in a sheet, those beyond 50 are only
   * counted.
   *
   * @param sheetOrder names of the sheets as the findings give them
   */
  public static List<Finding> of(List<Finding> findings, List<String> sheetOrder) {
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
