package sparewell.workbook.read;

import java.time.LocalDate;
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
record LedgersReader(
    Book book, StylesReader styles, PlacesReader places, ItemsReader items, ItemMatch match) {
  List<Restock> restocks() {
    return book.list(InputSheets.RESTOCKS, this::restock);
  }

  List<Transfer> transfers() {
    return book.list(InputSheets.TRANSFERS, this::transfer);
  }

  List<Recount> recounts() {
    return book.list(InputSheets.COUNTS, this::recount);
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

  private Optional<Restock> restock(Row row) {
    Optional<Place> place = places.place(row, "Box");
    row.read("Cost", Amounts::money); // not used, but a slip in it is told
    return entry(row)
        .map(e -> new Restock(e.date(), e.item(), place.orElseThrow(), e.pieces(), row.origin()));
  }

  private Optional<Transfer> transfer(Row row) {
    Optional<Place> from = places.place(row, "From box");
    Optional<Place> to = places.place(row, "To box");
    Optional<Entry> entry = entry(row);
    if (entry.isPresent() && from.equals(to)) {
      row.say("To box", Code.TRANSFER_TO_ITSELF, to.orElseThrow().name());
      return Optional.empty();
    }
    return entry.map(
        e ->
            new Transfer(
                e.date(),
                e.item(),
                e.pieces(),
                from.orElseThrow(),
                to.orElseThrow(),
                row.origin()));
  }

  private Optional<Recount> recount(Row row) {
    Optional<Place> place = places.place(row, "Box");
    return entry(row)
        .map(e -> new Recount(e.date(), e.item(), place.orElseThrow(), e.pieces(), row.origin()));
  }
}
