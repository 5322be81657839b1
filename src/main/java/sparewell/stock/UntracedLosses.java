package sparewell.stock;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.StockRow;

/** Losses since a count that name no item in stock, so that they come off none. */
final class UntracedLosses {
  private final Map<String, LocalDate> countedSince = new LinkedHashMap<>();
  private final Map<String, Integer> pieces = new LinkedHashMap<>();
  private final Map<String, Cell> first = new LinkedHashMap<>();

  UntracedLosses(Season season) {
    for (StockRow row : season.stock()) {
      row.countedOn()
          .ifPresent(
              date ->
                  countedSince.merge(row.item().style(), date, (a, b) -> a.isBefore(b) ? a : b));
    }
  }

  void add(Loss loss, LocalDate date) {
    LocalDate since = countedSince.get(loss.item().style());
    if (since != null && date.isAfter(since) && loss.lostPieces() > 0) {
      pieces.merge(loss.item().style(), loss.lostPieces(), Integer::sum);
      first.putIfAbsent(loss.item().style(), loss.origin());
    }
  }

  void report(Findings findings) {
    pieces.forEach(
        (style, count) -> findings.add(Code.LOSS_WITHOUT_ITEM, first.get(style), count, style));
  }
}
