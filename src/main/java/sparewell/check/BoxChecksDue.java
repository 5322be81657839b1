package sparewell.check;

import java.time.LocalDate;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Box;
import sparewell.season.Season;

/** Boxes whose next check is due at the date of analysis. */
final class BoxChecksDue implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    for (Box box : season.boxes()) {
      if (box.checkEveryDays().isEmpty()) {
        continue;
      }
      int every = box.checkEveryDays().getAsInt();
      if (box.lastChecked().isEmpty()) {
        findings.add(Code.BOX_NEVER_CHECKED, box.origin(), box.name(), every);
        continue;
      }
      LocalDate due = box.lastChecked().get().plusDays(every);
      if (!due.isAfter(season.settings().asOf())) {
        findings.add(Code.BOX_CHECK_DUE, box.origin(), box.name(), due);
      }
    }
  }
}
