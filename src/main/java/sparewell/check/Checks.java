package sparewell.check;

import java.util.List;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.season.Season;

/** Applies all rules. */
public final class Checks {
  /** Every rule; add new ones here. */
  public static final List<Rule> ALL =
      List.of(
          new StockPresence(),
          new BoxChecksDue(),
          new HoursPlausible(),
          new LossWithoutHours(),
          new WeightsKnown(),
          new WeightsPlausible(),
          new PositionsPlausible(),
          new FloorsAgree(),
          new GearFloors(),
          new CountsFresh(),
          new EventsAhead(),
          new PlateReadable());

  private Checks() {}

  public static List<Finding> of(Season season) {
    Findings findings = new Findings();
    ALL.forEach(rule -> rule.check(season, findings));
    return findings.list();
  }
}
