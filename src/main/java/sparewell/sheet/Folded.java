package sparewell.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;

/**
 * A finding, or all notes of its kind about one sheet.
 *
 * @param first the first of them
 * @param count how many there are
 */
record Folded(Finding first, int count) {
  /** Fewer are shown one by one. */
  private static final int FEWEST = 3;

  /** What several notes of a kind say together; the others say the first and count the rest. */
  private static final Map<Code, String> TOGETHER =
      Map.ofEntries(
          Map.entry(Code.BOX_SIZE_UNKNOWN, "boxes lack sizes"),
          Map.entry(Code.COMPARTMENT_SIZE_UNKNOWN, "compartments lack sizes"),
          Map.entry(Code.NO_MAX_LOAD, "compartments have no max load"),
          Map.entry(Code.STYLE_WITHOUT_STOCK, "styles have no row in Stock"),
          Map.entry(Code.BOX_WITHOUT_STOCK, "boxes hold nothing"),
          Map.entry(Code.COMPARTMENT_EMPTY, "compartments hold no box and no loose stock"),
          Map.entry(Code.BOX_CHECK_DUE, "boxes are to be checked"),
          Map.entry(Code.BOX_NEVER_CHECKED, "boxes to be checked have no Last checked"),
          Map.entry(Code.COUNT_OLD, "counts are more than a year old"),
          Map.entry(Code.PRICE_NOT_KNOWN, "items to be bought have no known pack price"),
          Map.entry(Code.EVENT_PAST, "events are before the date of analysis"),
          Map.entry(Code.AFTER_AS_OF, "rows are after the date of analysis"));

  /** Notes of one kind about one sheet folded into their first, where there are several. */
  static List<Folded> of(List<Finding> findings) {
    Map<List<Object>, List<Finding>> kinds = new LinkedHashMap<>();
    for (Finding finding : findings) {
      if (finding.severity() == Severity.NOTE) {
        kinds.computeIfAbsent(kind(finding), k -> new ArrayList<>()).add(finding);
      }
    }
    List<Folded> rows = new ArrayList<>();
    for (Finding finding : findings) {
      List<Finding> alike = kinds.getOrDefault(kind(finding), List.of(finding));
      if (alike.size() < FEWEST) {
        rows.add(new Folded(finding, 1));
      } else if (alike.get(0) == finding) {
        rows.add(new Folded(finding, alike.size()));
      }
    }
    return rows;
  }

  private static List<Object> kind(Finding finding) {
    return List.of(finding.code(), finding.at().sheet());
  }

  /** What is wrong, in an angler's words. */
  String message() {
    if (count == 1) {
      return first.message();
    }
    String together = TOGETHER.get(first.code());
    return together == null
        ? first.message() + "; and " + (count - 1) + " more like it"
        : count + " " + together;
  }
}
