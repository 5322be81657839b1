package sparewell.rates;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import sparewell.experience.Club;
import sparewell.rates.fit.Estimate;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.rates.history.StyleUse;

/** Puts a fit into words and lines. */
final class RateTable {
  private RateTable() {}

  /**
   * One line for each style.
   *
   * @param others what others lose of each style; empty where nobody else is known
   * @param planned styles with hours in an event's plan: these have a rate though never thrown
   */
  static List<StyleRate> styles(
      SeasonHistory history, RateFit fit, Set<String> planned, List<Club.Typical> others) {
    int n = history.styles().size();
    int[] trips = new int[n];
    double[] hours = new double[n];
    int[] lost = new int[n];
    boolean[] familySeen = new boolean[history.families().size()];
    int[] stylesInFamily = new int[history.families().size()];
    history.familyOfStyle().forEach(family -> stylesInFamily[family]++);
    boolean anySeen = false;
    for (StyleUse use : history.uses()) {
      trips[use.style()]++;
      hours[use.style()] += use.hours();
      lost[use.style()] += use.lostPieces();
      familySeen[history.familyOfStyle().get(use.style())] = true;
      anySeen = true;
    }
    List<StyleRate> lines = new ArrayList<>();
    for (int s = 0; s < n; s++) {
      int family = history.familyOfStyle().get(s);
      String familyName = history.families().get(family);
      String style = history.styles().get(s);
      boolean gear = !anySeen && history.usual().of(style) == 0;
      boolean idle = (anySeen || gear) && hours[s] == 0 && !planned.contains(style);
      Estimate rate = fit.rate(s);
      double own = fit.ownShare(s);
      StyleRate.Basis basis =
          hours[s] == 0
              ? StyleRate.Basis.NONE
              : history.usual().perHourAfloat()
                  ? StyleRate.Basis.TRIP_HOURS
                  : StyleRate.Basis.STYLE_HOURS;
      lines.add(
          new StyleRate(
              style,
              familyName,
              basis,
              trips[s],
              hours[s],
              lost[s],
              hours[s] > 0 ? OptionalDouble.of(10 * lost[s] / hours[s]) : OptionalDouble.empty(),
              known(idle, 10 * rate.mean()),
              known(idle, 10 * rate.low90()),
              known(idle, 10 * rate.high90()),
              known(idle, own),
              idle || others.isEmpty()
                  ? Optional.empty()
                  : Optional.of(
                      AmongOthers.of(
                          others.get(s),
                          own,
                          Math.log(rate.low90()),
                          Math.log(rate.high90()),
                          hours[s] > 0)),
              idle
                  ? (gear ? "taken for gear, which is not thrown" : "never thrown and never lost")
                      + ": no rate, only its floor counts"
                  : !others.isEmpty()
                      ? note(source(familyName, others.get(s)), trips[s], lost[s], own)
                      : !anySeen
                          ? "no trips logged yet: a guess made for any angler"
                          : !familySeen[family]
                              ? "nothing logged for any "
                                  + familyName
                                  + ": taken from all other styles"
                              : note(
                                  source(familyName, n == 1, stylesInFamily[family] == 1),
                                  trips[s],
                                  lost[s],
                                  own)));
    }
    return List.copyOf(lines);
  }

  private static OptionalDouble known(boolean idle, double value) {
    return idle ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** What a rate leans on that has no log of its own, in an angler's words. */
  private static String source(String family, boolean only, boolean alone) {
    if (only) {
      return "a guess made for any angler";
    }
    return family.isEmpty() ? "the other styles" : alone ? "the other families" : "other " + family;
  }

  private static String source(String family, Club.Typical typical) {
    String logs = typical.anglers() + (typical.anglers() == 1 ? " other log" : " other logs");
    return switch (typical.source()) {
      case STYLE -> logs;
      case FAMILY -> "other " + family + " of " + logs;
      case OTHERS -> "other families of " + logs;
    };
  }

  private static String note(String source, int trips, int lost, double own) {
    if (trips == 0) {
      return "never thrown on a logged trip: taken from " + source;
    }
    String rests = "rests on " + trips + (trips == 1 ? " trip" : " trips");
    if (lost == 0) {
      rests += " without a loss";
    }
    if (own < 0.5) {
      return rests + ", leans on " + source;
    }
    return trips < 5 || lost == 0 ? rests : "";
  }

  static List<CoverEffect> covers(SeasonHistory history, RateFit fit) {
    List<CoverEffect> lines = new ArrayList<>();
    for (int c = 0; c < history.covers().size(); c++) {
      String cover = history.covers().get(c);
      int trips =
          (int)
              history.trips().stream()
                  .filter(trip -> trip.cover().filter(cover::equals).isPresent())
                  .count();
      // A cover whose trips left no exposure is known by its prior alone.
      int number = c < fit.input().covers() ? c : Observation.NEVER_LOGGED;
      Estimate effect = fit.multiplier(number);
      lines.add(new CoverEffect(cover, trips, effect.mean(), effect.low90(), effect.high90()));
    }
    return List.copyOf(lines);
  }
}
