package sparewell.rates;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.StyleHours;
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
 * @param meanShare mean share of the hours afloat that each style is thrown
 * @param perHourAfloat whether no trip has style hours
 * @param findings what had to be assumed
 */
record SeasonHistory(
    List<String> styles,
    List<String> families,
    List<Integer> familyOfStyle,
    List<String> covers,
    List<Trip> trips,
    List<Use> uses,
    Map<String, Double> meanShare,
    boolean perHourAfloat,
    List<Finding> findings) {
  private static final double DAYS_PER_MONTH = 365.25 / 12;

  /**
   * A style used on a trip.
   *
   * @param trip number of the trip in {@link SeasonHistory#trips()}
   * @param style number of the style
   * @param hours exposure, &gt; 0
   * @param lostPieces pieces lost
   * @param ranOut whether none was left
   * @param assumed whether the style hours of the trip leave the style out, so that its hours are
   *     assumed
   * @param byShare whether the trip has no style hours, so that the hours are the style's share of
   *     the trip's
   */
  record Use(
      int trip,
      int style,
      double hours,
      int lostPieces,
      boolean ranOut,
      boolean assumed,
      boolean byShare) {}

  /** Reads a season. */
  static SeasonHistory of(Season season) {
    return of(
        season,
        season.trips().stream()
            .filter(trip -> trip.fishedHours().orElse(0) > 0)
            .sorted(Comparator.comparing(Trip::date))
            .toList());
  }

  private static SeasonHistory of(Season season, List<Trip> trips) {
    Findings findings = new Findings();
    List<String> styles = season.styles().stream().map(Style::name).toList();
    Map<String, Integer> styleNumber = numbers(styles);
    List<String> families = season.styles().stream().map(Style::family).distinct().toList();
    Map<String, Integer> familyNumber = numbers(families);
    List<String> covers = trips.stream().flatMap(trip -> trip.cover().stream()).distinct().toList();
    Map<String, Map<String, Double>> thrown = new LinkedHashMap<>();
    for (StyleHours row : season.styleHours()) {
      thrown
          .computeIfAbsent(row.trip(), id -> new LinkedHashMap<>())
          .merge(row.style(), row.thrownHours(), Double::sum);
    }
    boolean afloat = trips.stream().noneMatch(trip -> thrown.containsKey(trip.id()));
    Map<String, Double> share = shares(styles, trips, thrown, afloat);
    List<Use> uses = uses(season, trips, styleNumber, thrown, share, afloat, findings);
    if (trips.isEmpty()) {
      findings.add(Code.NO_TRIPS_TO_FIT, sparewell.finding.Cell.ofSheet("Trips"));
    } else if (afloat) {
      findings.add(Code.NO_STYLE_HOURS, sparewell.finding.Cell.ofSheet("Style hours"));
    }
    return new SeasonHistory(
        styles,
        families,
        season.styles().stream().map(style -> familyNumber.get(style.family())).toList(),
        covers,
        trips,
        uses,
        share,
        afloat,
        findings.list());
  }

  private static Map<String, Integer> numbers(List<String> names) {
    Map<String, Integer> numbers = new LinkedHashMap<>();
    for (String name : names) {
      numbers.putIfAbsent(name, numbers.size());
    }
    return numbers;
  }

  private static Map<String, Double> shares(
      List<String> styles,
      List<Trip> trips,
      Map<String, Map<String, Double>> thrown,
      boolean afloat) {
    Map<String, Double> share = new LinkedHashMap<>();
    int count = 0;
    for (Trip trip : trips) {
      if (thrown.containsKey(trip.id())) {
        count++;
        thrown
            .get(trip.id())
            .forEach(
                (style, hours) ->
                    share.merge(style, hours / trip.fishedHours().getAsDouble(), Double::sum));
      }
    }
    for (String style : styles) {
      share.put(style, afloat ? 1 : share.getOrDefault(style, 0.0) / Math.max(1, count));
    }
    return share;
  }

  private static List<Use> uses(
      Season season,
      List<Trip> trips,
      Map<String, Integer> styleNumber,
      Map<String, Map<String, Double>> thrown,
      Map<String, Double> share,
      boolean afloat,
      Findings findings) {
    Map<String, Map<String, List<Loss>>> losses = new LinkedHashMap<>();
    for (Loss loss : season.losses()) {
      losses
          .computeIfAbsent(loss.trip(), id -> new LinkedHashMap<>())
          .computeIfAbsent(loss.item().style(), style -> new ArrayList<>())
          .add(loss);
    }
    double usualShare =
        share.values().stream()
            .mapToDouble(Double::doubleValue)
            .filter(s -> s > 0)
            .average()
            .orElse(1);
    List<Use> uses = new ArrayList<>();
    for (int t = 0; t < trips.size(); t++) {
      Trip trip = trips.get(t);
      double tripHours = trip.fishedHours().getAsDouble();
      Map<String, Double> hoursHere = thrown.get(trip.id());
      Map<String, List<Loss>> lostHere = losses.getOrDefault(trip.id(), Map.of());
      for (String name : concerned(styleNumber, hoursHere, lostHere)) {
        List<Loss> lost = lostHere.getOrDefault(name, List.of());
        int pieces = lost.stream().mapToInt(Loss::lostPieces).sum();
        boolean ranOut = lost.stream().anyMatch(Loss::ranOut);
        double hours =
            hoursHere == null ? tripHours * share.get(name) : hoursHere.getOrDefault(name, 0.0);
        boolean leftOut = !(hours > 0) && (pieces > 0 || ranOut);
        if (leftOut && share.get(name) > 0) {
          hours = tripHours * share.get(name);
          findings.add(
              Code.LOSS_WITHOUT_STYLE_HOURS, lost.get(0).origin(), name, trip.id(), shown(hours));
        } else if (leftOut) {
          hours = tripHours * usualShare;
          findings.add(
              Code.LOSS_WITHOUT_SHARE, lost.get(0).origin(), name, trip.id(), shown(hours));
        }
        if (hours > 0) {
          uses.add(
              new Use(t, styleNumber.get(name), hours, pieces, ranOut, leftOut, hoursHere == null));
        }
      }
    }
    return uses;
  }

  /** Styles that a trip may have to do with, in their order. */
  private static Collection<String> concerned(
      Map<String, Integer> styleNumber,
      Map<String, Double> hoursHere,
      Map<String, List<Loss>> lostHere) {
    if (hoursHere == null) {
      return styleNumber.keySet();
    }
    TreeMap<Integer, String> concerned = new TreeMap<>();
    for (Set<String> names : List.of(hoursHere.keySet(), lostHere.keySet())) {
      for (String name : names) {
        Integer number = styleNumber.get(name);
        if (number != null) {
          concerned.put(number, name);
        }
      }
    }
    return concerned.values();
  }

  private static String shown(double hours) {
    return String.format(Locale.ROOT, "%.1f", hours);
  }

  /** What was known before a trip. */
  SeasonHistory before(Season season, int trip) {
    return of(season, trips.subList(0, trip));
  }

  /** The input of a fit. */
  FitInput input(LocalDate asOf, java.util.OptionalDouble halfLifeMonths) {
    List<Observation> observations = new ArrayList<>();
    Map<String, Integer> coverNumber = new TreeMap<>();
    for (Use use : uses) {
      Trip trip = trips.get(use.trip());
      double months = ChronoUnit.DAYS.between(trip.date(), asOf) / DAYS_PER_MONTH;
      double weight =
          halfLifeMonths.isPresent()
              ? Math.pow(2, -Math.max(0, months) / halfLifeMonths.getAsDouble())
              : 1;
      int cover =
          trip.cover()
              .map(name -> coverNumber.computeIfAbsent(name, covers::indexOf))
              .orElse(Observation.MIX);
      if (weight > 1e-6) {
        observations.add(
            new Observation(
                use.style(),
                use.hours(),
                trip.days(),
                cover,
                use.lostPieces(),
                use.ranOut(),
                weight));
      }
    }
    int seen = coverNumber.values().stream().mapToInt(c -> c + 1).max().orElse(0);
    return new FitInput(familyOfStyle, families.size(), seen, observations);
  }
}
