package sparewell.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Recount;
import sparewell.season.StockRow;
import sparewell.units.Mass;

/**
 * Replays one item in all its places, day by day. Within a day things are added and carried first,
 * then lost, and counted last: what was done on the day of a count is in it. So the order of rows
 * means nothing, but for two counts of one place on one day.
 */
final class ItemLedger {
  /** Date of a count without one: it is current. */
  private static final LocalDate CURRENT = LocalDate.MAX;

  private enum Part {
    PUT,
    LOSE,
    STOCK_ROW,
    RECOUNT
  }

  private record Step(LocalDate date, Part part, Consumer<Account> play, Account account) {}

  /** Pieces lost that no place held at the time. */
  private record Debt(LocalDate date, int pieces) {}

  private final ItemId item;
  private final BoxPlaces places;
  private final List<StockRow> rows = new ArrayList<>();
  private final Map<Place, LocalDate> recounts = new HashMap<>();
  private final Map<LocalDate, Integer> losses = new TreeMap<>();
  private final List<Step> steps = new ArrayList<>();
  private final Map<Place, Account> accounts = new TreeMap<>(Place.BY_NAME);
  private final List<Debt> debts = new ArrayList<>();
  private final Findings findings = new Findings();
  private final Set<Place> told = new HashSet<>();
  private final Map<Cell, Integer> notPut = new HashMap<>();
  private int notLost;
  private int missing;
  private LocalDate inStockCount = LocalDate.MIN;
  private Cell first = Cell.NOWHERE;

  ItemLedger(ItemId item, BoxPlaces places) {
    this.item = item;
    this.places = places;
  }

  ItemId item() {
    return item;
  }

  Stream<StockRow> rows() {
    return rows.stream();
  }

  void count(StockRow row) {
    rows.add(row);
    meet(row.place(), row.origin()).inStock = true;
  }

  void recount(Recount count) {
    Account account = meet(count.place(), count.origin());
    account.counted = true;
    recounts.merge(count.place(), count.date(), (a, b) -> a.isAfter(b) ? a : b);
    add(count.date(), Part.RECOUNT, account, a -> a.recount(count.countedPieces()));
  }

  void restock(LocalDate date, Place place, int pieces, Cell origin) {
    add(
        date,
        Part.PUT,
        meet(place, origin),
        account -> {
          put(account, date, pieces, origin);
          account.bought |= account.open;
          if (account.open && !account.counted && told.add(place)) {
            findings.add(Code.RESTOCK_WITHOUT_ROW, origin, item.spoken(), place.name());
          }
        });
  }

  /** Pieces carried into a place, or, below zero, out of it. */
  void carry(LocalDate date, Place place, int pieces, Cell origin) {
    add(date, Part.PUT, meet(place, origin), account -> put(account, date, pieces, origin));
  }

  void lose(LocalDate date, int pieces) {
    losses.merge(date, pieces, Integer::sum);
  }

  private Account meet(Place place, Cell origin) {
    first = first.equals(Cell.NOWHERE) ? origin : first;
    return accounts.computeIfAbsent(place, Account::new);
  }

  private void add(LocalDate date, Part part, Account account, Consumer<Account> play) {
    steps.add(new Step(date, part, play, account));
  }

  void play() {
    rows.forEach(this::countIn);
    losses.forEach(
        (date, pieces) -> add(date, Part.LOSE, null, none -> lose(new Debt(date, pieces))));
    steps.sort(Comparator.comparing(Step::date).thenComparing(Step::part));
    for (Step step : steps) {
      step.play().accept(step.account());
      if (step.part() == Part.RECOUNT) {
        debts.clear(); // whoever counts anew starts anew
      }
    }
    settle();
  }

  /** A row without a date is current, unless its place was counted since in the sheet of counts. */
  private void countIn(StockRow row) {
    Account account = accounts.get(row.place());
    LocalDate recount = recounts.get(row.place());
    LocalDate date = row.countedOn().orElse(recount == null ? CURRENT : LocalDate.MIN);
    account.counted = true;
    account.undated |= date.equals(CURRENT);
    LocalDate known = date.equals(LocalDate.MIN) ? recount : date;
    inStockCount = known.isAfter(inStockCount) ? known : inStockCount;
    if (!date.equals(LocalDate.MIN)) {
      add(date, Part.STOCK_ROW, account, a -> a.countRow(row.countedPieces()));
    }
  }

  /**
   * Puts pieces where they are counted on: in a place without a row of the stock sheet, those put
   * there since the item's last count; earlier ones are in that count, wherever they are now.
   */
  private void put(Account account, LocalDate date, int pieces, Cell origin) {
    if (!account.inStock && date.isAfter(inStockCount)) {
      account.open = true;
    }
    if (account.open) {
      account.pieces += pieces;
    } else if (account.undated || !account.inStock && inStockCount.equals(CURRENT)) {
      notPut.put(origin, Math.abs(pieces));
    } else if (!account.counted && pieces > 0 && told.add(account.place)) {
      findings.add(
          Code.PUT_BEFORE_COUNT, origin, item.spoken(), account.place.name(), inStockCount);
    }
  }

  /** Takes a loss off the places aboard, then off those ashore, and owes what they do not hold. */
  private void lose(Debt loss) {
    int left = loss.pieces();
    for (boolean ashore : new boolean[] {false, true}) {
      List<Account> there =
          accounts.values().stream()
              .filter(account -> places.ashore(account.place, loss.date()) == ashore)
              .toList();
      left = take(there, left);
      if (there.stream().anyMatch(Account::countedLater)) {
        // The rest is in that count, or can be told only from its date.
        notLost += there.stream().anyMatch(account -> account.undated) ? left : 0;
        return;
      }
    }
    if (left > 0 && accounts.values().stream().anyMatch(account -> account.open)) {
      debts.add(new Debt(loss.date(), left));
    }
  }

  /** Takes pieces off the places that hold most; returns what they could not give. */
  private static int take(List<Account> there, int pieces) {
    int left = pieces;
    List<Account> most = new ArrayList<>(there);
    most.removeIf(account -> !account.open || account.pieces <= 0);
    most.sort(Comparator.comparingInt((Account account) -> account.pieces).reversed());
    for (Account account : most) {
      int taken = Math.min(left, account.pieces);
      account.pieces -= taken;
      left -= taken;
    }
    return left;
  }

  /** Lets what was added later make up for losses that nothing covered at the time. */
  private void settle() {
    List<Debt> open = List.copyOf(debts);
    debts.clear();
    open.forEach(this::lose);
    missing = debts.stream().mapToInt(Debt::pieces).sum();
    for (Account account : accounts.values()) {
      if (account.pieces < 0) {
        findings.add(
            Code.CARRIED_TOO_MANY, first, item.spoken(), account.place.name(), -account.pieces);
        account.pieces = 0;
      }
    }
  }

  int pieces(boolean ashore) {
    return accounts.values().stream()
        .filter(account -> places.ashore(account.place) == ashore)
        .mapToInt(account -> account.pieces)
        .sum();
  }

  /** Pieces lost, added or carried that only the date of a count could place before or after it. */
  int leftOut() {
    return notLost + notPut.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** One holding for each place that was counted, bought into, or holds something. */
  Stream<Holding> holdings(Optional<Mass> weightEach) {
    return accounts.values().stream()
        .filter(account -> account.counted || account.bought || account.pieces > 0)
        .map(
            account ->
                new Holding(
                    item, account.place, places.ashore(account.place), account.pieces, weightEach));
  }

  void report(Findings all) {
    if (missing > 0) {
      all.add(Code.RECOUNT, first, item.spoken(), missing);
    }
    all.addAll(findings.list());
  }
}
