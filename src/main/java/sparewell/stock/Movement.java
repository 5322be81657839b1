package sparewell.stock;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Predicate;
import sparewell.finding.Cell;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Place;
import sparewell.season.Restock;

/**
 * Pieces added or lost on a day.
 *
 * @param date when
 * @param item which
 * @param pieces how many, at least 0
 * @param added where they were put; absent for a loss
 * @param origin the row that says so
 */
record Movement(LocalDate date, ItemId item, int pieces, Optional<Place> added, Cell origin) {
  static Movement of(Restock restock) {
    return new Movement(
        restock.date(),
        restock.item(),
        restock.addedPieces(),
        Optional.of(restock.place()),
        restock.origin());
  }

  static Movement of(Loss loss, LocalDate date) {
    return new Movement(date, loss.item(), loss.lostPieces(), Optional.empty(), loss.origin());
  }

  void applyTo(ItemLedger ledger, Predicate<Place> ashore) {
    added.ifPresentOrElse(
        place -> ledger.restock(this, place, ashore.test(place)), () -> ledger.lose(this));
  }
}
