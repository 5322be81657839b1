package sparewell.rates.history;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.Trip;

/**
 * A season turned into exposures: for how long each style was used on each trip, and what was lost.
 *
 * @param styles names of the styles, in the order of the workbook
 * @param families their families
 * @param familyOfStyle number of the family of each style
 * @param covers categories of cover logged, in the order of the trips
 * @param trips trips with hours, in time
 * @param uses one for each style and trip with exposure, in the order of the trips
 * @param usual share of the hours afloat that each style is thrown
 * @param findings what had to be assumed
 */
public record SeasonHistory(
    List<String> styles,
    List<String> families,
    List<Integer> familyOfStyle,
    List<String> covers,
    List<Trip> trips,
    List<StyleUse> uses,
    UsualShares usual,
    List<Finding> findings) {
  private static final double DAYS_PER_MONTH = 365.25 / 12;

  /** Trips weighing less are left out. */
  private static final double LEAST_WEIGHT = 1e-6;

  /** Reads a season. */
  public static SeasonHistory of(Season season) {
    return of(season, new TripLog(season), trips(season));
  }

  /** The same with other usual shares. */
  public SeasonHistory with(UsualShares shares) {
    return new SeasonHistory(
        styles, families, familyOfStyle, covers, trips, uses, shares, findings);
  }

  /** Trips of a season that have hours, in time. */
  public static List<Trip> trips(Season season) {
    return season.trips().stream()
        .filter(trip -> trip.fishedHours().orElse(0) > 0)
        .sorted(Comparator.comparing(Trip::date))
        .toList();
  }

  /**
   * History of the given trips, and no others.
   *
   * @param log of the season
   * @param trips with hours, in time
   */
  public static SeasonHistory of(Season season, TripLog log, List<Trip> trips) {
    Findings findings = new Findings();
    List<String> styles = season.styles().stream().map(Style::name).toList();
    List<String> families = season.styles().stream().map(Style::family).distinct().toList();
    UsualShares usual = UsualShares.of(season.styles(), trips, log);
    List<StyleUse> uses = new ArrayList<>();
    for (int t = 0; t < trips.size(); t++) {
      uses.addAll(log.uses(t, trips.get(t), usual, findings));
    }
    if (trips.isEmpty()) {
      findings.add(Code.NO_TRIPS_TO_FIT, Cell.ofSheet("Trips"));
    } else if (usual.perHourAfloat()) {
      findings.add(Code.NO_STYLE_HOURS, Cell.ofSheet("Style hours"));
    }
    return new SeasonHistory(
        styles,
        families,
        season.styles().stream().map(style -> families.indexOf(style.family())).toList(),
        trips.stream().flatMap(trip -> trip.cover().stream()).distinct().toList(),
        trips,
        uses,
        usual,
        findings.list());
  }

  /**
   * The input of a fit.
   *
   * @param asOf day on which a trip of that day has its whole weight
   * @param halfLifeMonths a trip so many months older weighs half as much; absent: all weigh 1
   */
  public FitInput input(LocalDate asOf, OptionalDouble halfLifeMonths) {
    List<Observation> observations = new ArrayList<>();
    int seen = 0;
    for (StyleUse use : uses) {
      Trip trip = trips.get(use.trip());
      double weight = weight(trip, asOf, halfLifeMonths);
      int cover = trip.cover().map(covers::indexOf).orElse(Observation.MIX);
      seen = Math.max(seen, cover + 1);
      if (weight > LEAST_WEIGHT) {
        observations.add(
            new Observation(
                use.style(),
                use.trip(),
                use.hours(),
                trip.days(),
                cover,
                use.lostPieces(),
                use.ranOut(),
                weight));
      }
    }
    return new FitInput(familyOfStyle, families.size(), seen, observations);
  }

  private static double weight(Trip trip, LocalDate asOf, OptionalDouble halfLifeMonths) {
    if (halfLifeMonths.isEmpty()) {
      return 1;
    }
    double months = ChronoUnit.DAYS.between(trip.date(), asOf) / DAYS_PER_MONTH;
    return Math.pow(2, -Math.max(0, months) / halfLifeMonths.getAsDouble());
  }
}
