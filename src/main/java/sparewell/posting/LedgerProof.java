package sparewell.posting;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.season.BoxMove;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Place;
import sparewell.season.Recount;
import sparewell.season.Restock;
import sparewell.season.Season;
import sparewell.season.Transfer;
import sparewell.season.Trip;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.stock.OnHandCalculator;

/**
 * Holds the rows to be posted against what was done: the stock that the ledgers make of them must
 * be the stock before with the pieces carried and bought. Where it is not, as on the day of a count
 * (its rows are in the count), beside a count without a date, or where losses were never covered,
 * the outcome is counted.
 */
final class LedgerProof {
  private final Season before;
  private final LocalDate date;
  private final Map<ItemId, Map<Place, Integer>> start;
  private final Map<ItemId, Map<Place, Integer>> changes = new LinkedHashMap<>();
  private final Map<ItemId, Map<Place, Integer>> counted = new LinkedHashMap<>();
  private final Map<ItemId, Cell> from = new LinkedHashMap<>();
  private final List<Restock> restocks = new ArrayList<>();
  private final List<Transfer> transfers = new ArrayList<>();
  private final List<Recount> recounts = new ArrayList<>();
  private final List<BoxMove> moves = new ArrayList<>();

  /**
   * Nothing done yet.
   *
   * @param before the records with the trip that is posted with the ticks
   */
  LedgerProof(Season before, LocalDate date) {
    this.before = before;
    this.date = date;
    this.start = of(OnHandCalculator.of(before));
  }

  void bought(ItemId item, Place place, int pieces, Cell at) {
    restocks.add(new Restock(date, item, place, pieces, at));
    change(item, place, pieces, at);
  }

  void carried(ItemId item, Place fromPlace, Place to, int pieces, Cell at) {
    transfers.add(new Transfer(date, item, pieces, fromPlace, to, at));
    change(item, fromPlace, -pieces, at);
    change(item, to, pieces, at);
  }

  /** A box now stands where {@code to} is. */
  void moved(String box, Place to, Cell at) {
    moves.add(new BoxMove(date, box, "", to.compartment(), at));
    start.forEach(
        (item, places) -> {
          if (places.keySet().stream().anyMatch(place -> place.box().equals(box))) {
            from.putIfAbsent(item, at);
          }
        });
  }

  /**
   * Where pieces lay that the plan has in {@code planned}: where there are too few, in the place
   * that this posting says they were brought to, as the angler may have chosen another.
   */
  Place lying(ItemId item, Place planned, int pieces) {
    Map<Place, Integer> changed = changes.getOrDefault(item, Map.of());
    int there = start.getOrDefault(item, Map.of()).getOrDefault(planned, 0);
    if (there + changed.getOrDefault(planned, 0) >= pieces) {
      return planned;
    }
    return changed.entrySet().stream()
        .filter(change -> change.getValue() >= pieces)
        .map(Map.Entry::getKey)
        .min(Comparator.comparing(Place::name))
        .orElse(planned);
  }

  private void change(ItemId item, Place place, int pieces, Cell at) {
    changes.computeIfAbsent(item, i -> new LinkedHashMap<>()).merge(place, pieces, Integer::sum);
    from.putIfAbsent(item, at);
  }

  /** The angler counted the item there himself, after all else. */
  void counted(ItemId item, Place place, int pieces, Cell at) {
    recounts.add(new Recount(date, item, place, pieces, at));
    counted.computeIfAbsent(item, i -> new LinkedHashMap<>()).put(place, pieces);
    from.putIfAbsent(item, at);
  }

  /** The counts to post with the rows: of the places that would come out wrong, else of all. */
  List<Recount> missing() {
    List<Recount> missing = new ArrayList<>();
    for (boolean everywhere : new boolean[] {false, true}) {
      Map<ItemId, Map<Place, Integer>> wanted = wanted();
      Map<ItemId, Map<Place, Integer>> found = of(OnHandCalculator.of(after(missing)));
      missing.removeIf(count -> wrong(count.item(), wanted, found));
      for (ItemId item : from.keySet()) {
        if (wrong(item, wanted, found)) {
          counts(item, everywhere, wanted.get(item), found.getOrDefault(item, Map.of()))
              .forEach(missing::add);
        }
      }
    }
    return missing;
  }

  private static boolean wrong(
      ItemId item,
      Map<ItemId, Map<Place, Integer>> wanted,
      Map<ItemId, Map<Place, Integer>> found) {
    return !known(wanted.getOrDefault(item, Map.of()))
        .equals(known(found.getOrDefault(item, Map.of())));
  }

  /** None is the same as nothing known. */
  private static Map<Place, Integer> known(Map<Place, Integer> pieces) {
    Map<Place, Integer> some = new LinkedHashMap<>(pieces);
    some.values().removeIf(count -> count == 0);
    return some;
  }

  private Stream<Recount> counts(
      ItemId item, boolean everywhere, Map<Place, Integer> wanted, Map<Place, Integer> found) {
    LocalDate day = day(item);
    TreeSet<Place> places = new TreeSet<>(Comparator.comparing(Place::name));
    places.addAll(wanted.keySet());
    places.addAll(found.keySet());
    places.removeAll(counted.getOrDefault(item, Map.of()).keySet());
    return places.stream()
        .filter(
            place ->
                everywhere || !wanted.getOrDefault(place, 0).equals(found.getOrDefault(place, 0)))
        .map(place -> new Recount(day, item, place, wanted.getOrDefault(place, 0), from.get(item)));
  }

  /** The day of the rows, or a later one on which something else was logged of the item. */
  private LocalDate day(ItemId item) {
    Map<String, Trip> trips = before.tripsById();
    return Stream.of(
            before.losses().stream()
                .filter(loss -> loss.item().equals(item) && trips.containsKey(loss.trip()))
                .map(loss -> trips.get(loss.trip()).date()),
            before.restocks().stream().filter(r -> r.item().equals(item)).map(Restock::date),
            before.transfers().stream().filter(t -> t.item().equals(item)).map(Transfer::date),
            before.recounts().stream().filter(c -> c.item().equals(item)).map(Recount::date),
            before.stock().stream()
                .filter(row -> row.item().equals(item))
                .flatMap(row -> row.countedOn().stream()),
            Stream.of(date))
        .flatMap(days -> days)
        .max(LocalDate::compareTo)
        .orElse(date);
  }

  /** Stock with all that was done added; nothing below zero. */
  private Map<ItemId, Map<Place, Integer>> wanted() {
    Map<ItemId, Map<Place, Integer>> pieces = new TreeMap<>();
    start.forEach((item, places) -> pieces.put(item, new LinkedHashMap<>(places)));
    changes.forEach(
        (item, places) ->
            places.forEach(
                (place, change) ->
                    pieces
                        .computeIfAbsent(item, i -> new LinkedHashMap<>())
                        .merge(place, change, Integer::sum)));
    counted.forEach(
        (item, places) -> pieces.computeIfAbsent(item, i -> new LinkedHashMap<>()).putAll(places));
    pieces.values().forEach(places -> places.replaceAll((place, count) -> Math.max(0, count)));
    return pieces;
  }

  private static Map<ItemId, Map<Place, Integer>> of(OnHand onHand) {
    Map<ItemId, Map<Place, Integer>> pieces = new TreeMap<>();
    for (Holding holding : onHand.holdings()) {
      pieces
          .computeIfAbsent(holding.item(), item -> new LinkedHashMap<>())
          .merge(holding.place(), holding.pieces(), Integer::sum);
    }
    return pieces;
  }

  private Season after(List<Recount> more) {
    return with(
        before,
        before.trips(),
        before.losses(),
        joined(before.restocks(), restocks),
        joined(before.transfers(), transfers),
        joined(joined(before.recounts(), more), recounts),
        boxMoves());
  }

  /** All moves of boxes in time, each from where the one before led. */
  private List<BoxMove> boxMoves() {
    Map<String, String> standing = new HashMap<>();
    before.boxes().forEach(box -> standing.put(box.name(), box.compartment()));
    for (int i = before.boxMoves().size() - 1; i >= 0; i--) {
      BoxMove move = before.boxMoves().get(i);
      standing.put(move.box(), move.from());
    }
    List<BoxMove> all = new ArrayList<>(joined(before.boxMoves(), moves));
    all.sort(Comparator.comparing(BoxMove::date));
    all.replaceAll(
        move ->
            new BoxMove(
                move.date(),
                move.box(),
                standing.put(move.box(), move.to()),
                move.to(),
                move.origin()));
    return all;
  }

  /** The records with a trip and its losses. */
  static Season withTrip(Season season, Trip trip, List<Loss> losses) {
    return with(
        season,
        joined(season.trips(), List.of(trip)),
        joined(season.losses(), losses),
        season.restocks(),
        season.transfers(),
        season.recounts(),
        season.boxMoves());
  }

  private static <T> List<T> joined(List<T> some, List<T> more) {
    return Stream.concat(some.stream(), more.stream()).toList();
  }

  private static Season with(
      Season season,
      List<Trip> trips,
      List<Loss> losses,
      List<Restock> restocks,
      List<Transfer> transfers,
      List<Recount> recounts,
      List<BoxMove> moves) {
    Map<String, String> standing = new HashMap<>();
    moves.forEach(move -> standing.put(move.box(), move.to()));
    return new Season(
        season.settings(),
        season.styles(),
        season.stock(),
        season.boxes().stream()
            .map(box -> box.in(standing.getOrDefault(box.name(), box.compartment())))
            .toList(),
        season.compartments(),
        trips,
        season.styleHours(),
        losses,
        restocks,
        transfers,
        moves,
        recounts,
        season.events(),
        season.loads(),
        season.boat());
  }
}
