package sparewell.check;

import java.util.List;
import java.util.function.BiConsumer;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.season.Season;

/** Applies all rules. */
public final class Checks {
  /** Every rule; add new ones here. */
  private static final List<BiConsumer<Season, Findings>> ALL =
      List.of(
          StockRules::presence,
          DueDates::boxChecks,
          TripRules::hoursPlausible,
          TripRules::lossWithoutHours,
          WeightRules::known,
          WeightRules::plausible,
          BoatRules::positionsPlausible,
          StockRules::floorsAgree,
          StockRules::gearFloors,
          DueDates::counts,
          DueDates::events,
          BoatRules::plateReadable);

  private Checks() {}

  public static List<Finding> of(Season season) {
    Findings findings = new Findings();
    ALL.forEach(rule -> rule.accept(season, findings));
    return findings.list();
  }
}
