package sparewell.spares;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sparewell.season.Compartment;
import sparewell.season.Event;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.season.Trip;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/**
 * Finds styles that only add weight.
 *
 * <p>Idle is a style with pieces aboard, without hours or a loss since the set months ago. It is
 * judged only where hours by style have been logged for as long, and never for a style that is
 * needed at once (rods, nets, tools) or that a coming event's plan names.
 */
final class IdleFinder {
  private IdleFinder() {}

  static List<IdleStyle> of(Season season, OnHand onHand) {
    LocalDate since = since(season);
    Map<String, Trip> trips = season.tripsById();
    Map<String, LocalDate> last = new HashMap<>();
    Optional<LocalDate> logged = Optional.empty();
    for (StyleHours hours : season.styleHours()) {
      Trip trip = trips.get(hours.trip());
      if (trip != null && hours.thrownHours().orElse(1) > 0) {
        later(last, hours.style(), trip.date());
        if (logged.isEmpty() || trip.date().isBefore(logged.get())) {
          logged = Optional.of(trip.date());
        }
      }
    }
    if (logged.isEmpty() || logged.get().isAfter(since)) {
      return List.of();
    }
    for (Loss loss : season.losses()) {
      Trip trip = trips.get(loss.trip());
      if (trip != null && loss.lostPieces() > 0) {
        later(last, loss.item().style(), trip.date());
      }
    }
    Set<String> planned = planned(season);
    List<IdleStyle> idle = new ArrayList<>();
    for (Style style : season.styles()) {
      LocalDate date = last.get(style.name());
      if ((date == null || date.isBefore(since))
          && style.neededAtOnce() == 0
          && !planned.contains(style.name())) {
        weigh(season, onHand, style.name(), Optional.ofNullable(date)).ifPresent(idle::add);
      }
    }
    return idle;
  }

  private static LocalDate since(Season season) {
    double months = season.settings().idleAfterMonths();
    long whole = (long) Math.floor(months);
    return season
        .settings()
        .asOf()
        .minusMonths(whole)
        // of a mean month, 365.25 / 12 days
        .minusDays(Math.round((months - whole) * 30.4375));
  }

  private static void later(Map<String, LocalDate> last, String style, LocalDate date) {
    last.merge(style, date, (one, other) -> one.isAfter(other) ? one : other);
  }

  private static Set<String> planned(Season season) {
    Set<String> planned = new HashSet<>();
    for (Event event : season.events()) {
      if (!event.date().isBefore(season.settings().asOf())) {
        event.plan().forEach(line -> planned.add(line.style()));
      }
    }
    return planned;
  }

  private static Optional<IdleStyle> weigh(
      Season season, OnHand onHand, String style, Optional<LocalDate> lastThrown) {
    Map<String, Compartment> compartments = season.compartmentsByName();
    int pieces = 0;
    int unweighed = 0;
    Mass weight = Mass.ZERO;
    double moment = 0;
    double side = 0;
    for (Holding holding : onHand.holdings()) {
      if (holding.ashore() || !holding.item().style().equals(style)) {
        continue;
      }
      pieces += holding.pieces();
      if (holding.weight().isEmpty()) {
        unweighed += holding.pieces();
        continue;
      }
      Mass mass = holding.weight().get();
      weight = weight.plus(mass);
      Compartment at = compartments.get(holding.place().compartment());
      if (at != null) {
        double kg = mass.in(MassUnit.KILOGRAM);
        moment += kg * at.fromTransom().in(LengthUnit.METRE);
        side += kg * at.fromCentreline().in(LengthUnit.METRE);
      }
    }
    return pieces == 0
        ? Optional.empty()
        : Optional.of(new IdleStyle(style, pieces, lastThrown, weight, unweighed, moment, side));
  }
}
