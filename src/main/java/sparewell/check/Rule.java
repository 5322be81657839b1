package sparewell.check;

import sparewell.finding.Findings;
import sparewell.season.Season;

/** Looks a season over for one kind of trouble. */
public interface Rule {
  /** Adds a finding for each place where the rule is broken. */
  void check(Season season, Findings findings);
}
