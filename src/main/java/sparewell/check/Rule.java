package sparewell.check;

import sparewell.finding.Findings;
import sparewell.season.Season;

/** Checks a season for one kind of fault. */
public interface Rule {
  /** Adds a finding for each violation. */
  void check(Season season, Findings findings);
}
