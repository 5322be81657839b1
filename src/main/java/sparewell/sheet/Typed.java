package sparewell.sheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sparewell.finding.Cell;

/**
 * The angler's entries on our sheets since they were written.
 *
 * @param rows rows of tables with something typed
 * @param card what stands in the fields of the trip card, by label
 * @param carded keys of the items that stand on the trip card, from the top down
 * @param strays what stands in the columns to type into, but beside no line of ours
 * @param posted rows appended to each of the angler's sheets just before this run, by its name
 */
public record Typed(
    List<Row> rows,
    Map<String, Object> card,
    List<List<String>> carded,
    List<Stray> strays,
    Map<String, Integer> posted) {
  public static final Typed NOTHING =
      new Typed(List.of(), Map.of(), List.of(), List.of(), Map.of());

  public Typed {
    rows = List.copyOf(rows);
    card = Map.copyOf(card);
    carded = List.copyOf(carded);
    strays = List.copyOf(strays);
    posted = Collections.unmodifiableMap(new LinkedHashMap<>(posted));
  }

  /** Entries left once rows are posted, and with them a card that tells of a trip. */
  public Typed unposted(Map<String, Integer> rowsPosted) {
    boolean card = !TripCardSheet.filled(this);
    return new Typed(
        rows.stream()
            .filter(
                row -> !row.ticked() && (card || !row.table().sheet().equals(TripCardSheet.NAME)))
            .toList(),
        card ? this.card : Map.of(),
        card ? carded : List.of(),
        List.of(),
        rowsPosted);
  }

  /** An entry beside no line of ours. */
  public record Stray(Cell at, String typed) {}

  /**
   * A row of a table.
   *
   * @param table which table
   * @param key the texts by which it is known again
   * @param nth how many rows of the same key stood above it
   * @param shown every cell of the row by its heading: texts, numbers and dates
   * @param entries what was typed, by heading; empty where only another place may have been
   * @param at its first cell to type into
   */
  public record Row(
      EntryTable table,
      List<String> key,
      int nth,
      Map<String, Object> shown,
      Map<String, Object> entries,
      Cell at) {
    public Row {
      key = List.copyOf(key);
      shown = Map.copyOf(shown);
      entries = Map.copyOf(entries);
    }

    /** Returns whether it says more than no. */
    public boolean ticked() {
      return !entries.values().stream().allMatch(Ticks::isNo);
    }

    /** Its subject in words. */
    public String words() {
      return String.join(", ", key.stream().filter(text -> !text.isEmpty()).toList());
    }
  }
}
