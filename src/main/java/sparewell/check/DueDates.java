package sparewell.check;

import java.time.LocalDate;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.DueCheck;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.StockRow;

/** Rules for what is due, old or over at the date of analysis. */
final class DueDates {
  private DueDates() {}

  static void boxChecks(Season season, Findings findings) {
    for (DueCheck check : DueCheck.of(season)) {
      String name = check.box().name();
      Cell at = check.box().origin().under("Last checked");
      check
          .dueOn()
          .ifPresentOrElse(
              due -> findings.add(Code.BOX_CHECK_DUE, at, name, due),
              () ->
                  findings.add(
                      Code.BOX_NEVER_CHECKED, at, name, check.box().checkEveryDays().getAsInt()));
    }
  }

  static void counts(Season season, Findings findings) {
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

  static void events(Season season, Findings findings) {
    for (Event event : season.events()) {
      if (event.date().isBefore(season.settings().asOf())) {
        findings.add(Code.EVENT_PAST, event.origin().under("Date"), event.name(), event.date());
      }
    }
  }
}
