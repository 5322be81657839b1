package sparewell.check;

import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Box;
import sparewell.season.DueCheck;
import sparewell.season.Season;

/** Boxes whose next check is due at the date of analysis. */
final class BoxChecksDue implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    for (DueCheck check : DueCheck.of(season)) {
      Box box = check.box();
      if (check.dueOn().isEmpty()) {
        findings.add(
            Code.BOX_NEVER_CHECKED,
            box.origin().under("Last checked"),
            box.name(),
            box.checkEveryDays().getAsInt());
      } else {
        findings.add(
            Code.BOX_CHECK_DUE,
            box.origin().under("Last checked"),
            box.name(),
            check.dueOn().get());
      }
    }
  }
}
