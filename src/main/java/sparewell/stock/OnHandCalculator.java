package sparewell.stock;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import sparewell.finding.Findings;
import sparewell.season.Compartment;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Restock;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;
import sparewell.season.Trip;
import sparewell.units.Mass;

/**
 * Works out what is on hand: each count, less the losses on trips dated after it, plus the restocks
 * dated after it. A count without a date is current. Losses come off the item's box aboard that
 * holds most; what that box cannot give comes off the next.
 */
public final class OnHandCalculator {
  private final Season season;
  private final Map<String, Compartment> compartments;
  private final Map<String, Style> styles;
  private final Map<ItemId, ItemLedger> ledgers = new LinkedHashMap<>();
  private final Findings findings = new Findings();

  private OnHandCalculator(Season season) {
    this.season = season;
    this.compartments = season.compartmentsByName();
    this.styles = season.stylesByName();
  }

  /**
   * What is on hand after all that the season has logged; never less than nothing: losses beyond
   * what was there ask for a recount in the findings.
   */
  public static OnHand of(Season season) {
    return new OnHandCalculator(season).onHand();
  }

  private OnHand onHand() {
    for (StockRow row : season.stock()) {
      ledger(row.item()).count(row, ashore(row.place()));
    }
    List<Movement> movements = movements();
    UntracedLosses untraced = new UntracedLosses(season);
    for (Movement movement : movements) {
      ItemLedger ledger = ledgers.get(movement.item());
      if (ledger == null) {
        untraced.add(movement);
      } else {
        movement.applyTo(ledger, this::ashore);
      }
    }
    ledgers.values().forEach(ItemLedger::settle);
    untraced.report(findings);
    List<Holding> holdings = new ArrayList<>();
    List<OnHand.ItemStock> items = new ArrayList<>();
    for (ItemLedger ledger : ledgers.values()) {
      Optional<Mass> weight = weightEach(ledger);
      ledger.holdings(weight).forEach(holdings::add);
      items.add(itemStock(ledger, weight));
      ledger.report(findings);
    }
    return new OnHand(holdings, items, findings.list());
  }

  private ItemLedger ledger(ItemId item) {
    return ledgers.computeIfAbsent(item, ItemLedger::new);
  }

  private boolean ashore(Place place) {
    return Optional.ofNullable(compartments.get(place.compartment()))
        .map(Compartment::ashore)
        .orElse(false);
  }

  /** Losses and restocks by date; on one day what was added was there before what was lost. */
  private List<Movement> movements() {
    Map<String, Trip> trips = season.tripsById();
    for (Restock restock : season.restocks()) {
      ledger(restock.item());
    }
    Stream<Movement> restocked = season.restocks().stream().map(Movement::of);
    Stream<Movement> lost =
        season.losses().stream()
            .filter(loss -> trips.containsKey(loss.trip()))
            .map(loss -> Movement.of(loss, trips.get(loss.trip()).date()));
    // Sorting keeps this order within a day.
    return Stream.concat(restocked, lost).sorted(Comparator.comparing(Movement::date)).toList();
  }

  private Optional<Mass> weightEach(ItemLedger ledger) {
    return ledger
        .rows()
        .map(StockRow::weightEach)
        .flatMap(Optional::stream)
        .findFirst()
        .or(() -> style(ledger).flatMap(Style::weightEach));
  }

  private Optional<Style> style(ItemLedger ledger) {
    return Optional.ofNullable(styles.get(ledger.item().style()));
  }

  private OnHand.ItemStock itemStock(ItemLedger ledger, Optional<Mass> weight) {
    OptionalInt floor =
        ledger.rows().map(StockRow::carryAtLeast).flatMapToInt(OptionalInt::stream).max();
    Optional<BigDecimal> price =
        ledger
            .rows()
            .map(StockRow::packPrice)
            .flatMap(Optional::stream)
            .findFirst()
            .or(() -> style(ledger).flatMap(Style::packPrice));
    return new OnHand.ItemStock(
        ledger.item(), ledger.pieces(false), ledger.pieces(true), floor, price, weight);
  }
}
