package sparewell.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Restock;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;
import sparewell.season.Transfer;
import sparewell.season.Trip;
import sparewell.units.Mass;

/**
 * Works out what is on hand: each count, less the losses on trips dated after it, plus what was
 * added or carried in, less what was carried out after it. A count without a date is current.
 * Losses come off the item's box aboard that holds most, then its other boxes aboard, then those
 * ashore, where boxes stood at that time.
 */
public final class OnHandCalculator {
  private final Season season;
  private final BoxPlaces places;
  private final Map<String, Style> styles;
  private final Map<ItemId, ItemLedger> ledgers = new LinkedHashMap<>();
  private final Findings findings = new Findings();

  private OnHandCalculator(Season season) {
    this.season = season;
    this.places = new BoxPlaces(season);
    this.styles = season.stylesByName();
  }

  /** Stock after all that was logged; where it would be below zero, a finding asks for a count. */
  public static OnHand of(Season season) {
    return new OnHandCalculator(season).onHand();
  }

  private OnHand onHand() {
    season.stock().forEach(row -> ledger(row.item()).count(row));
    season.recounts().forEach(count -> ledger(count.item()).recount(count));
    for (Restock restock : season.restocks()) {
      ledger(restock.item())
          .restock(restock.date(), restock.place(), restock.addedPieces(), restock.origin());
    }
    for (Transfer way : season.transfers()) {
      ItemLedger ledger = ledger(way.item());
      ledger.carry(way.date(), way.from(), -way.carriedPieces(), way.origin());
      ledger.carry(way.date(), way.to(), way.carriedPieces(), way.origin());
    }
    lose();
    ledgers.values().forEach(ItemLedger::play);
    List<Holding> holdings = new ArrayList<>();
    List<OnHand.ItemStock> items = new ArrayList<>();
    for (ItemLedger ledger : ledgers.values()) {
      Optional<Mass> weight = known(ledger, StockRow::weightEach, Style::weightEach);
      ledger.holdings(weight).forEach(holdings::add);
      items.add(itemStock(ledger, weight));
      ledger.report(findings);
    }
    reportLeftOut();
    return new OnHand(holdings, items, findings.list());
  }

  private ItemLedger ledger(ItemId item) {
    return ledgers.computeIfAbsent(item, id -> new ItemLedger(id, places));
  }

  private void lose() {
    Map<String, Trip> trips = season.tripsById();
    Map<String, LocalDate> countedSince = new HashMap<>();
    for (StockRow row : season.stock()) {
      row.countedOn()
          .ifPresent(
              date ->
                  countedSince.merge(row.item().style(), date, (a, b) -> a.isBefore(b) ? a : b));
    }
    Map<String, List<Loss>> untraced = new LinkedHashMap<>();
    for (Loss loss : season.losses()) {
      LocalDate date = trips.get(loss.trip()).date();
      String style = loss.item().style();
      if (ledgers.containsKey(loss.item())) {
        ledgers.get(loss.item()).lose(date, loss.lostPieces());
      } else if (loss.lostPieces() > 0
          && date.isAfter(countedSince.getOrDefault(style, LocalDate.MAX))) {
        untraced.computeIfAbsent(style, name -> new ArrayList<>()).add(loss);
      }
    }
    untraced.forEach(
        (style, losses) -> {
          int pieces = losses.stream().mapToInt(Loss::lostPieces).sum();
          findings.add(Code.LOSS_WITHOUT_ITEM, losses.get(0).origin(), pieces, style);
        });
  }

  /** One warning for all that a blank date of count leaves out. */
  private void reportLeftOut() {
    int pieces = ledgers.values().stream().mapToInt(ItemLedger::leftOut).sum();
    if (pieces > 0) {
      Cell undated =
          season.stock().stream()
              .filter(row -> row.countedOn().isEmpty() && ledger(row.item()).leftOut() > 0)
              .map(StockRow::origin)
              .findFirst()
              .orElse(Cell.NOWHERE);
      findings.add(Code.COUNT_WITHOUT_DATE, undated, pieces);
    }
  }

  /** The first value in the item's rows, else its style's. */
  private <T> Optional<T> known(
      ItemLedger ledger,
      Function<StockRow, Optional<T>> ofRow,
      Function<Style, Optional<T>> ofStyle) {
    return ledger
        .rows()
        .map(ofRow)
        .flatMap(Optional::stream)
        .findFirst()
        .or(() -> Optional.ofNullable(styles.get(ledger.item().style())).flatMap(ofStyle));
  }

  private OnHand.ItemStock itemStock(ItemLedger ledger, Optional<Mass> weight) {
    return new OnHand.ItemStock(
        ledger.item(),
        ledger.pieces(false),
        ledger.pieces(true),
        ledger.rows().map(StockRow::carryAtLeast).flatMapToInt(OptionalInt::stream).max(),
        known(ledger, StockRow::packPrice, Style::packPrice),
        weight);
  }
}
