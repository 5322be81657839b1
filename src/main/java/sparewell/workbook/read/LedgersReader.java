package sparewell.workbook.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.finding.Code;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Recount;
import sparewell.season.Restock;
import sparewell.season.Transfer;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Amounts;

/** Reads restocks, transfers and counts up to the date of analysis. */
final class LedgersReader {
  private final Book book;
  private final StylesReader styles;
  private final PlacesReader places;
  private final ItemsReader items;
  private final ItemMatch match;
  private final List<Restock> restocks = new ArrayList<>();
  private final List<Transfer> transfers = new ArrayList<>();
  private final List<Recount> recounts = new ArrayList<>();

  LedgersReader(
      Book book, StylesReader styles, PlacesReader places, ItemsReader items, ItemMatch match) {
    this.book = book;
    this.styles = styles;
    this.places = places;
    this.items = items;
    this.match = match;
    book.each(InputSheets.RESTOCKS, this::restock);
    book.each(InputSheets.TRANSFERS, this::transfer);
    book.each(InputSheets.COUNTS, this::recount);
  }

  List<Restock> restocks() {
    return restocks;
  }

  List<Transfer> transfers() {
    return transfers;
  }

  List<Recount> recounts() {
    return recounts;
  }

  private record Entry(LocalDate date, ItemId item, int pieces) {}

  /** Absent where the row cannot be used, or is of later than the date of analysis. */
  private Optional<Entry> entry(Row row) {
    Optional<LocalDate> date = row.date("Date");
    Optional<ItemId> item = items.item(row);
    Optional<Integer> count = styles.count(row, item.map(ItemId::style));
    if (row.failed() || book.isLater(row, date.orElseThrow())) {
      return Optional.empty();
    }
    ItemId meant = match.restocked(row, item.orElseThrow());
    return Optional.of(new Entry(date.get(), meant, count.orElseThrow()));
  }

  private void restock(Row row) {
    Optional<Place> place = places.place(row, "Box");
    row.read("Cost", Amounts::money); // not used, but a slip in it is told
    entry(row)
        .map(e -> new Restock(e.date(), e.item(), place.orElseThrow(), e.pieces(), row.origin()))
        .ifPresent(restocks::add);
  }

  private void transfer(Row row) {
    Optional<Place> from = places.place(row, "From box");
    Optional<Place> to = places.place(row, "To box");
    Optional<Entry> entry = entry(row);
    if (entry.isEmpty()) {
      return;
    }
    if (from.equals(to)) {
      row.say("To box", Code.TRANSFER_TO_ITSELF, to.orElseThrow().name());
      return;
    }
    Entry e = entry.get();
    transfers.add(
        new Transfer(
            e.date(), e.item(), e.pieces(), from.orElseThrow(), to.orElseThrow(), row.origin()));
  }

  private void recount(Row row) {
    Optional<Place> place = places.place(row, "Box");
    entry(row)
        .map(e -> new Recount(e.date(), e.item(), place.orElseThrow(), e.pieces(), row.origin()))
        .ifPresent(recounts::add);
  }
}
