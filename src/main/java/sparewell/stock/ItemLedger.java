package sparewell.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.StockRow;
import sparewell.units.Mass;

/** What becomes of one item's counts in all its places. */
final class ItemLedger {
  private final ItemId item;
  private final List<StockRow> rows = new ArrayList<>();
  private final List<Account> accounts = new ArrayList<>();
  private final List<Debt> debts = new ArrayList<>();
  private final Map<String, Cell> uncounted = new LinkedHashMap<>();
  private int missing;

  /** Pieces in one place since one count; {@code since} is absent where the count is current. */
  private static final class Account {
    private final Place place;
    private final boolean ashore;
    private final Optional<LocalDate> since;
    private int pieces;

    Account(Place place, boolean ashore, Optional<LocalDate> since, int pieces) {
      this.place = place;
      this.ashore = ashore;
      this.since = since;
      this.pieces = pieces;
    }

    boolean countedBefore(LocalDate date) {
      return since.filter(date::isAfter).isPresent();
    }
  }

  /** Pieces lost that no place held at the time. */
  private record Debt(LocalDate date, int pieces) {}

  ItemLedger(ItemId item) {
    this.item = item;
  }

  ItemId item() {
    return item;
  }

  /** Its rows in the stock sheet. */
  Stream<StockRow> rows() {
    return rows.stream();
  }

  void count(StockRow row, boolean ashore) {
    rows.add(row);
    accounts.add(new Account(row.place(), ashore, row.countedOn(), row.countedPieces()));
  }

  /** Adds to the count of that place; a place without a row was never counted, so nothing. */
  void restock(Movement restock, Place place, boolean ashore) {
    List<Account> there = accounts.stream().filter(a -> a.place.equals(place)).toList();
    if (there.isEmpty()) {
      Account fresh = new Account(place, ashore, Optional.of(LocalDate.MIN), restock.pieces());
      accounts.add(fresh);
      uncounted.put(place.name(), restock.origin());
    } else {
      there.stream()
          .filter(account -> account.countedBefore(restock.date()))
          .findFirst()
          .ifPresent(account -> account.pieces += restock.pieces());
    }
  }

  void lose(Movement loss) {
    int left = take(loss.date(), loss.pieces());
    if (left > 0 && !open(loss.date()).isEmpty()) {
      debts.add(new Debt(loss.date(), left));
    }
  }

  /** Takes pieces off the places that hold most; returns what they could not give. */
  private int take(LocalDate date, int pieces) {
    int left = pieces;
    List<Account> open = new ArrayList<>(open(date));
    open.sort(Comparator.comparingInt((Account account) -> account.pieces).reversed());
    for (Account account : open) {
      int taken = Math.min(left, account.pieces);
      account.pieces -= taken;
      left -= taken;
    }
    return left;
  }

  /** Places that a loss of that date comes off: those aboard, or ashore where none is aboard. */
  private List<Account> open(LocalDate date) {
    boolean aboard = accounts.stream().anyMatch(account -> !account.ashore);
    return accounts.stream()
        .filter(account -> account.ashore != aboard && account.countedBefore(date))
        .toList();
  }

  /** Lets later restocks make up for losses that nothing covered at the time. */
  void settle() {
    for (Debt debt : debts) {
      missing += take(debt.date(), debt.pieces());
    }
  }

  int pieces(boolean ashore) {
    return accounts.stream()
        .filter(account -> account.ashore == ashore)
        .mapToInt(account -> account.pieces)
        .sum();
  }

  /** One holding for each place. */
  Stream<Holding> holdings(Optional<Mass> weightEach) {
    Map<Place, Holding> byPlace = new LinkedHashMap<>();
    for (Account account : accounts) {
      byPlace.merge(
          account.place,
          new Holding(item, account.place, account.ashore, account.pieces, weightEach),
          (a, b) -> new Holding(item, a.place(), a.ashore(), a.pieces() + b.pieces(), weightEach));
    }
    return byPlace.values().stream();
  }

  void report(Findings findings) {
    Cell first =
        rows()
            .map(StockRow::origin)
            .findFirst()
            .orElseGet(() -> uncounted.values().iterator().next());
    if (missing > 0) {
      findings.add(Code.RECOUNT, first, item.spoken(), missing);
    }
    uncounted.forEach(
        (place, origin) -> findings.add(Code.RESTOCK_WITHOUT_ROW, origin, item.spoken(), place));
  }
}
