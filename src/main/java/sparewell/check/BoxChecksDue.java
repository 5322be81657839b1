package sparewell.check;

import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.DueCheck;
import sparewell.season.Season;

/** Boxes whose next check is due at the date of analysis. */
final class BoxChecksDue implements Rule {
  @Override
  public void check(Season season, Findings findings) {
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
}
