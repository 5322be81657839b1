package sparewell.check;

import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Event;
import sparewell.season.Season;

/** Events that are over. */
final class EventsAhead implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    for (Event event : season.events()) {
      if (event.date().isBefore(season.settings().asOf())) {
        findings.add(Code.EVENT_PAST, event.origin().under("Date"), event.name(), event.date());
      }
    }
  }
}
