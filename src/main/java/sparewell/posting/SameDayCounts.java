package sparewell.posting;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.season.ItemId;
import sparewell.season.Recount;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;

/**
 * Counts to post with what was carried or bought: rows dated before or on the day of a count are in
 * it already, and without the date of a count no row moves it. What was ticked was done after the
 * count, so the outcome is counted.
 */
final class SameDayCounts {
  /**
   * A count to post.
   *
   * @param item what
   * @param place where
   * @param pieces how many
   * @param from the cell of ours that it comes from
   */
  record Count(ItemId item, String place, int pieces, Cell from) {}

  private final Season season;
  private final OnHand onHand;
  private final LocalDate date;
  private final Map<ItemId, Map<String, Integer>> changes = new LinkedHashMap<>();
  private final Map<ItemId, Cell> from = new LinkedHashMap<>();
  private final Map<ItemId, Set<String>> counted = new LinkedHashMap<>();

  SameDayCounts(Season season, OnHand onHand, LocalDate date) {
    this.season = season;
    this.onHand = onHand;
    this.date = date;
  }

  /** Takes in pieces that came to a place, or left it (negative). */
  void change(ItemId item, String place, int pieces, Cell at) {
    changes.computeIfAbsent(item, i -> new LinkedHashMap<>()).merge(place, pieces, Integer::sum);
    from.putIfAbsent(item, at);
  }

  /** Takes in that the angler counted the item there himself. */
  void counted(ItemId item, String place) {
    counted.computeIfAbsent(item, i -> new HashSet<>()).add(place);
  }

  /** The counts; of an item all places, as its other places hang on its latest count. */
  List<Count> all() {
    List<Count> counts = new ArrayList<>();
    changes.forEach(
        (item, places) -> {
          if (places.keySet().stream().anyMatch(place -> isInCount(item, place))) {
            Map<String, Integer> pieces = now(item);
            places.forEach((place, change) -> pieces.merge(place, change, Integer::sum));
            pieces.keySet().removeAll(counted.getOrDefault(item, Set.of()));
            pieces.forEach(
                (place, count) ->
                    counts.add(new Count(item, place, Math.max(0, count), from.get(item))));
          }
        });
    return counts;
  }

  private Map<String, Integer> now(ItemId item) {
    Map<String, Integer> pieces = new LinkedHashMap<>();
    for (Holding holding : onHand.holdings()) {
      if (holding.item().equals(item)) {
        pieces.merge(holding.place().name(), holding.pieces(), Integer::sum);
      }
    }
    return pieces;
  }

  /** Whether a row of this date would be taken to be in the count of a place already. */
  private boolean isInCount(ItemId item, String place) {
    List<StockRow> rows = season.stock().stream().filter(row -> row.item().equals(item)).toList();
    Optional<LocalDate> there = latest(item, Optional.of(place));
    boolean own =
        there.isPresent() || rows.stream().anyMatch(row -> row.place().name().equals(place));
    if (own) {
      return there.map(day -> !date.isAfter(day)).orElse(true);
    }
    // Without a count of its own the item's latest decides; one without a date is today's.
    boolean undated =
        rows.stream().anyMatch(row -> latest(item, Optional.of(row.place().name())).isEmpty());
    Optional<LocalDate> last = latest(item, Optional.empty());
    return undated || last.map(day -> !date.isAfter(day)).orElse(true);
  }

  private Optional<LocalDate> latest(ItemId item, Optional<String> place) {
    Stream<LocalDate> stock =
        season.stock().stream()
            .filter(row -> row.item().equals(item))
            .filter(row -> place.map(row.place().name()::equals).orElse(true))
            .flatMap(row -> row.countedOn().stream());
    Stream<LocalDate> recounts =
        season.recounts().stream()
            .filter(row -> row.item().equals(item))
            .filter(row -> place.map(row.place().name()::equals).orElse(true))
            .map(Recount::date);
    return Stream.concat(stock, recounts).max(LocalDate::compareTo);
  }
}
