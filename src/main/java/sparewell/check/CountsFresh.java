package sparewell.check;

import java.time.LocalDate;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Season;
import sparewell.season.StockRow;

/** Counts older than a year. */
final class CountsFresh implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    LocalDate yearAgo = season.settings().asOf().minusYears(1);
    for (StockRow row : season.stock()) {
      row.countedOn()
          .filter(date -> date.isBefore(yearAgo))
          .ifPresent(
              date ->
                  findings.add(
                      Code.COUNT_OLD,
                      row.origin().under("Counted on"),
                      row.item().spoken(),
                      row.place().name(),
                      date));
    }
  }
}
