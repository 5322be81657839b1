package sparewell.spares;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;
import sparewell.season.Compartment;
import sparewell.season.Event;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.StyleHours;
import sparewell.season.Trip;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/**
 * A style that only adds weight: with pieces aboard, without hours or a loss since the set months
 * ago. It is judged only where hours by style have been logged for as long, and never for a style
 * that is needed at once (rods, nets, tools) or that a coming event's plan names.
 *
 * @param lastThrown last trip with hours or a loss of it, where there is one
 * @param knownWeight mass of its pieces aboard, as far as known
 * @param unweighedPieces pieces aboard whose mass is not known
 * @param momentKgM sum of mass x station of the known mass, forward of the transom positive
 * @param sideMomentKgM sum of mass x side offset of the known mass, starboard positive
 */
public record IdleStyle(
    String style,
    int pieces,
    Optional<LocalDate> lastThrown,
    Mass knownWeight,
    int unweighedPieces,
    double momentKgM,
    double sideMomentKgM) {
  static List<IdleStyle> of(Season season, OnHand onHand) {
    LocalDate since = since(season);
    Map<String, Trip> trips = season.tripsById();
    Map<String, LocalDate> last = new HashMap<>();
    LocalDate logged = LocalDate.MAX;
    for (StyleHours hours : season.styleHours()) {
      if (hours.thrownHours().orElse(1) > 0) {
        LocalDate date = trips.get(hours.trip()).date();
        last.merge(hours.style(), date, BinaryOperator.maxBy(Comparator.naturalOrder()));
        logged = date.isBefore(logged) ? date : logged;
      }
    }
    if (logged.isAfter(since)) {
      return List.of();
    }
    for (Loss loss : season.losses()) {
      if (loss.lostPieces() > 0) {
        LocalDate date = trips.get(loss.trip()).date();
        last.merge(loss.item().style(), date, BinaryOperator.maxBy(Comparator.naturalOrder()));
      }
    }
    Set<String> planned = planned(season);
    return season.styles().stream()
        .filter(style -> last.getOrDefault(style.name(), LocalDate.MIN).isBefore(since))
        .filter(style -> style.neededAtOnce() == 0 && !planned.contains(style.name()))
        .flatMap(style -> weigh(season, onHand, style.name(), last.get(style.name())).stream())
        .toList();
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

  private static Set<String> planned(Season season) {
    return season.eventsAhead().stream()
        .flatMap(event -> event.plan().stream())
        .map(Event.PlanLine::style)
        .collect(Collectors.toSet());
  }

  private static Optional<IdleStyle> weigh(
      Season season, OnHand onHand, String style, LocalDate lastThrown) {
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
        : Optional.of(
            new IdleStyle(
                style, pieces, Optional.ofNullable(lastThrown), weight, unweighed, moment, side));
  }
}
