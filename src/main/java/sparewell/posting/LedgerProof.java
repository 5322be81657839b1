package sparewell.posting;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
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
import sparewell.stock.OnHandCalculator;

/**
 * Holds the rows to be posted against what was done: the stock that the ledgers make of them must
 * be the stock before with the pieces carried and bought. Where it is not, as on the day of a count
 * (its rows are in the count), beside a count without a date, or where losses were never covered,
 * the outcome is counted.
 */
final class LedgerProof {
  /** An item in a place. */
  private record Spot(ItemId item, Place place) {}

  private final Season before;
  private final LocalDate date;
  private final Map<Spot, Integer> start;
  private final Map<Spot, Integer> changes = new LinkedHashMap<>();
  private final Map<Spot, Integer> counted = new LinkedHashMap<>();
  private final Map<ItemId, Cell> from = new LinkedHashMap<>();
  private final List<Restock> restocks = new ArrayList<>();
  private final List<Transfer> transfers = new ArrayList<>();
  private final List<Recount> recounts = new ArrayList<>();
  private final List<BoxMove> moves = new ArrayList<>();

  /** Begins with the records before, the trip that is posted with the ticks among them. */
  LedgerProof(Season before, LocalDate date) {
    this.before = before;
    this.date = date;
    this.start = stock(before);
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
    for (Spot spot : start.keySet()) {
      if (spot.place().box().equals(box)) {
        from.putIfAbsent(spot.item(), at);
      }
    }
  }

  /**
   * Where pieces lay that the plan has in {@code planned}: where there are too few, in the place
   * that this posting says they were brought to, as the angler may have chosen another.
   */
  Place lying(ItemId item, Place planned, int pieces) {
    Spot spot = new Spot(item, planned);
    if (start.getOrDefault(spot, 0) + changes.getOrDefault(spot, 0) >= pieces) {
      return planned;
    }
    return changes.keySet().stream()
        .filter(change -> change.item().equals(item) && changes.get(change) >= pieces)
        .map(Spot::place)
        .min(Comparator.comparing(Place::name))
        .orElse(planned);
  }

  private void change(ItemId item, Place place, int pieces, Cell at) {
    changes.merge(new Spot(item, place), pieces, Integer::sum);
    from.putIfAbsent(item, at);
  }

  /** The angler counted the item there himself, after all else. */
  void counted(ItemId item, Place place, int pieces, Cell at) {
    recounts.add(new Recount(date, item, place, pieces, at));
    counted.put(new Spot(item, place), pieces);
    from.putIfAbsent(item, at);
  }

  /** The counts to post with the rows: of the places that would come out wrong, else of all. */
  List<Recount> missing() {
    Map<Spot, Integer> wanted = wanted();
    List<Recount> missing = new ArrayList<>();
    for (boolean everywhere : new boolean[] {false, true}) {
      Map<Spot, Integer> found = stock(after(missing));
      Set<Spot> spots = new HashSet<>(wanted.keySet());
      spots.addAll(found.keySet());
      Set<Spot> wrong = new HashSet<>(spots);
      wrong.removeIf(spot -> pieces(wanted, spot) == pieces(found, spot));
      Set<ItemId> items = wrong.stream().map(Spot::item).collect(Collectors.toSet());
      missing.removeIf(count -> items.contains(count.item()));
      (everywhere ? spots : wrong)
          .stream()
              .filter(spot -> items.contains(spot.item()) && from.containsKey(spot.item()))
              .filter(spot -> !counted.containsKey(spot))
              .sorted(Comparator.comparing(spot -> spot.place().name()))
              .map(spot -> count(spot, pieces(wanted, spot)))
              .forEach(missing::add);
    }
    List<ItemId> asTyped = List.copyOf(from.keySet());
    missing.sort(Comparator.comparing(count -> asTyped.indexOf(count.item())));
    return missing;
  }

  private static int pieces(Map<Spot, Integer> stock, Spot spot) {
    return stock.getOrDefault(spot, 0);
  }

  private Recount count(Spot spot, int pieces) {
    ItemId item = spot.item();
    return new Recount(day(item), item, spot.place(), pieces, from.get(item));
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
  private Map<Spot, Integer> wanted() {
    Map<Spot, Integer> pieces = new HashMap<>(start);
    changes.forEach((spot, change) -> pieces.merge(spot, change, Integer::sum));
    pieces.putAll(counted);
    pieces.replaceAll((spot, count) -> Math.max(0, count));
    return pieces;
  }

  private static Map<Spot, Integer> stock(Season season) {
    Map<Spot, Integer> pieces = new LinkedHashMap<>();
    for (Holding holding : OnHandCalculator.of(season).holdings()) {
      pieces.merge(new Spot(holding.item(), holding.place()), holding.pieces(), Integer::sum);
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
