package sparewell.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.Map;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Season;
import sparewell.season.StyleHours;
import sparewell.season.Trip;

/** Hours that no trip can have, and style hours far beyond those of their trip. */
final class HoursPlausible implements Rule {

  /** Several rods or anglers throw at once, but hardly more than this many. */
  private static final double MOST_AT_ONCE = 3;

  @Override
  public void check(Season season, Findings findings) {
    Map<String, Double> thrown = new HashMap<>();
    for (StyleHours hours : season.styleHours()) {
      thrown.merge(hours.trip(), hours.knownHours(), Double::sum);
    }
    for (Trip trip : season.trips()) {
      if (trip.fishedHours().isEmpty()) {
        continue;
      }
      double fished = trip.fishedHours().getAsDouble();
      if (fished > 24 * trip.days()) {
        findings.add(
            Code.TRIP_HOURS_BEYOND_DAYS,
            trip.origin().under("Hours"),
            shown(fished),
            shown(trip.days()));
      }
      double sum = thrown.getOrDefault(trip.id(), 0.0);
      if (sum > MOST_AT_ONCE * fished) {
        findings.add(
            Code.STYLE_HOURS_BEYOND_TRIP,
            trip.origin().under("Hours"),
            trip.id(),
            shown(sum),
            shown(fished));
      }
    }
  }

  /** Formats a number to four significant digits, without trailing zeros. */
  private static String shown(double number) {
    return new BigDecimal(number).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }
}
