package sparewell.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;

/**
 * A finding, or all of its kind about one sheet.
 *
 * @param all the findings, at least one
 */
record Folded(List<Finding> all) {
  /** Fewer are shown one by one. */
  private static final int FEWEST = 3;

  private static final int MOST_CELLS = 12;

  /**
   * Words for several findings of a kind. Warnings without words here stand alone; of other notes
   * the first is told and the rest is counted.
   */
  private static final Map<Code, String> TOGETHER =
      Map.ofEntries(
          Map.entry(Code.BOX_SIZE_UNKNOWN, "boxes lack sizes"),
          Map.entry(Code.BOX_WEIGHT_UNKNOWN, "boxes have no Empty weight"),
          Map.entry(Code.STYLE_WITHOUT_WEIGHT, "styles with stock aboard have no Weight each"),
          Map.entry(
              Code.DATE_AS_FRACTION, "fractions were turned into dates by the spreadsheet program"),
          Map.entry(Code.ASSUMED_DATE, "dates are not written like 2026-05-03"),
          Map.entry(Code.COMMA_NUMBER, "numbers have a comma; write them like 12.5"),
          Map.entry(Code.UNIT_IN_CELL, "cells have another unit than their column"),
          Map.entry(
              Code.LOSS_WITHOUT_STYLE_HOURS, "losses are missing in the Style hours of their trip"),
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

  Folded {
    all = List.copyOf(all);
  }

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
        || TOGETHER.containsKey(finding.code())
        || Causes.follows(finding);
  }

  private static List<Object> kind(Finding finding) {
    Object about = Causes.follows(finding) ? Causes.cause(finding) : "";
    return List.of(finding.code(), finding.at().sheet(), about);
  }

  Finding first() {
    return all.get(0);
  }

  /** The fault in an angler's words. */
  String message() {
    if (all.size() == 1) {
      return first().message();
    }
    if (Causes.follows(first())) {
      return all.size() + " rows wait for one that was left out: " + waitsFor();
    }
    String together = TOGETHER.get(first().code());
    return together == null
        ? first().message() + "; and " + (all.size() - 1) + " more like it"
        : all.size() + " " + together;
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

  /** The step taken about it. */
  String done() {
    boolean same = all.stream().map(Finding::done).distinct().count() == 1;
    return first().done() + (same ? "" : "; the others in the same way");
  }
}
