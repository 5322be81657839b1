package sparewell.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.StyleHours;
import sparewell.season.Trip;

/** Rules for trips, their hours and losses. */
final class TripRules {
  /** Several rods or anglers throw at once, but hardly more than this many. */
  private static final double MOST_AT_ONCE = 3;

  private TripRules() {}

  /** Hours that no trip can have, and style hours far beyond those of their trip. */
  static void hoursPlausible(Season season, Findings findings) {
    Map<String, Double> thrown = new HashMap<>();
    for (StyleHours hours : season.styleHours()) {
      thrown.merge(hours.trip(), hours.knownHours(), Double::sum);
    }
    for (Trip trip : season.trips()) {
      if (trip.fishedHours().isEmpty()) {
        continue;
      }
      double fished = trip.fishedHours().getAsDouble();
      Cell at = trip.origin().under("Hours");
      if (fished > 24 * trip.days()) {
        findings.add(Code.TRIP_HOURS_BEYOND_DAYS, at, shown(fished), shown(trip.days()));
      }
      double sum = thrown.getOrDefault(trip.id(), 0.0);
      if (sum > MOST_AT_ONCE * fished) {
        findings.add(Code.STYLE_HOURS_BEYOND_TRIP, at, trip.id(), shown(sum), shown(fished));
      }
    }
  }

  private static String shown(double number) {
    return new BigDecimal(number).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }

  /** Losses of a style whose hours on that trip are given as 0. */
  static void lossWithoutHours(Season season, Findings findings) {
    Map<List<String>, Double> thrown = new HashMap<>();
    for (StyleHours hours : season.styleHours()) {
      thrown.merge(
          List.of(hours.trip(), hours.style()), hours.thrownHours().orElse(1), Double::sum);
    }
    for (Loss loss : season.losses()) {
      Double hours = thrown.get(List.of(loss.trip(), loss.item().style()));
      if (hours != null && hours == 0 && loss.lostPieces() > 0) {
        findings.add(
            Code.LOSS_WITHOUT_HOURS, loss.origin().under("Lost"), loss.item().style(), loss.trip());
      }
    }
  }
}
