package sparewell.experience;

import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BinaryOperator;

/**
 * Rows of experience summed by key: a sufficient summary, however many logs there are.
 *
 * <p>Similar rows on a quantity share a cell: classes of 0.25 of the estimate and of the square
 * root of the precision. Cells hold sums, so the pools of two files add up to the pool of both.
 *
 * @param cells cells of each key, by class
 * @param labels spelling of the quantities in one of the logs
 */
public record Pool(SortedMap<Key, List<Cell>> cells, SortedMap<Key, Label> labels) {
  private static final double CLASSES = 4; // in each unit

  public Pool {
    cells = Collections.unmodifiableSortedMap(new TreeMap<>(cells));
    labels = Collections.unmodifiableSortedMap(new TreeMap<>(labels));
  }

  /**
   * Spelling of a quantity.
   *
   * @param family family of a style, else empty
   * @param familyKey the same in the form in which names are compared
   */
  public record Label(String name, String family, String familyKey) {
    private static final Comparator<Label> ORDER =
        Comparator.comparing(Label::name).thenComparing(Label::family);
  }

  /**
   * Logs with similar estimates and precisions.
   *
   * @param estimates sum of their estimates
   * @param precisions sum of one over their variances, each at most 1 / {@link
   *     Entry#LEAST_VARIANCE}
   */
  public record Cell(
      long logs, double estimates, double precisions, long trips, double hours, long pieces) {
    private Cell plus(Cell other) {
      return new Cell(
          logs + other.logs,
          estimates + other.estimates,
          precisions + other.precisions,
          trips + other.trips,
          hours + other.hours,
          pieces + other.pieces);
    }

    public double estimate() {
      return estimates / logs;
    }

    public double precision() {
      return precisions / logs;
    }
  }

  /** Class of an estimate and its precision. */
  private record Place(long estimate, long precision) {
    private static final Comparator<Place> ORDER =
        Comparator.comparingLong(Place::estimate).thenComparingLong(Place::precision);

    static Place of(double estimate, double precision) {
      return new Place(Math.round(CLASSES * estimate), Math.round(CLASSES * Math.sqrt(precision)));
    }
  }

  /** Sums rows; a repeated log or a copy of it counts once. */
  public static Pool of(Collection<Entry> rows) {
    SortedMap<Key, SortedMap<Place, Cell>> sums = new TreeMap<>();
    SortedMap<Key, Label> labels = new TreeMap<>();
    for (Entry row : once(rows)) {
      double precision = 1 / Math.max(row.logVariance(), Entry.LEAST_VARIANCE);
      sums.computeIfAbsent(row.key(), key -> new TreeMap<>(Place.ORDER))
          .merge(
              Place.of(row.logEstimate(), precision),
              new Cell(1, row.logEstimate(), precision, row.trips(), row.hours(), row.pieces()),
              Cell::plus);
      Label label = new Label(row.name(), row.family(), row.familyKey());
      labels.merge(row.key(), label, BinaryOperator.minBy(Label.ORDER));
    }
    SortedMap<Key, List<Cell>> cells = new TreeMap<>();
    sums.forEach((key, places) -> cells.put(key, List.copyOf(places.values())));
    return new Pool(cells, labels);
  }

  /** Rows of each log once: of several on one quantity the one with most data. */
  public static Collection<Entry> once(Collection<Entry> rows) {
    Map<String, String> firstId = new HashMap<>();
    rows.forEach(
        row ->
            firstId.merge(
                row.fingerprint(),
                row.logId(),
                BinaryOperator.minBy(Comparator.<String>naturalOrder())));
    Map<List<Object>, Entry> best = new TreeMap<>(Comparator.comparing(List::toString));
    for (Entry row : rows) {
      if (firstId.get(row.fingerprint()).equals(row.logId())) {
        List<Object> place = List.of(row.key(), row.logId());
        best.merge(place, row, BinaryOperator.maxBy(Entry.BY_WEALTH));
      }
    }
    return best.values();
  }

  /** Cells of a key; none where nobody logged it. */
  public List<Cell> of(Key key) {
    return cells.getOrDefault(key, List.of());
  }

  public long logs(Key key) {
    return of(key).stream().mapToLong(Cell::logs).sum();
  }
}
