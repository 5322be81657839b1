package sparewell.workbook.read;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sparewell.finding.Code;
import sparewell.season.Cause;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.workbook.InputSheets;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/** Reads the losses up to the date of analysis. */
record LossesReader(Book book, TripsReader trips, ItemsReader items, ItemMatch match) {
  List<Loss> losses() {
    return book.list(InputSheets.LOSSES, this::loss);
  }

  /** A row left out still tells that the style was lost: its other rows are the least. */
  private Optional<Loss> loss(Row row) {
    Optional<String> trip = trips.tripId(row);
    Optional<ItemId> item = items.item(row);
    Optional<Integer> lost = row.read("Lost", Amounts::pieces);
    Cause cause = row.read("Cause", LossesReader::cause).orElse(Cause.OTHER);
    boolean ranOut = row.yes("Ran out");
    if (row.failed()) {
      return trip.filter(trips::counts)
          .flatMap(id -> items.style(row, item).map(style -> unread(row, id, style)));
    }
    if (trips.isLater(row, trip.orElseThrow())) {
      return Optional.empty();
    }
    ItemId meant = match.lost(row, item.orElseThrow(), lost.orElseThrow());
    return Optional.of(new Loss(trip.get(), meant, lost.get(), cause, ranOut, row.origin()));
  }

  private static Loss unread(Row row, String trip, String style) {
    row.say("Style", Code.LOSS_UNREAD, style, trip);
    return new Loss(trip, new ItemId(style, "", ""), 0, Cause.OTHER, true, row.origin());
  }

  /** A word that is no known cause is another cause: the loss itself is not in doubt. */
  private static Optional<Cause> cause(RawCell cell, Remarks remarks) {
    Optional<String> word = Words.among(cell, InputSheets.LOSSES.column("Cause").choices());
    if (word.isEmpty()) {
      remarks.assumed(Code.CAUSE_AS_OTHER, Cause.OTHER.word());
    }
    return word.map(w -> Cause.valueOf(w.toUpperCase(Locale.ROOT)));
  }
}
