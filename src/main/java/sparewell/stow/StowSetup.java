package sparewell.stow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.season.BoatBounds;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.stock.OnHand;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.UnitSystem;

/**
 * Translates a season into a {@link StowProblem}: the boxes that may be moved are assigned, and
 * whatever stays where it is uses up its share of the limits beforehand. Keeps the way back from
 * indices to boxes and compartments, which are sorted by name so that the order of the rows never
 * matters.
 */
final class StowSetup {
  /** Least side tolerance where none is set, kg m: 60 lb in, or 70 kg cm. */
  private static final double LEAST_TOLERANCE_US = 60 * 0.45359237 * 0.0254;

  private static final double LEAST_TOLERANCE_METRIC = 0.7;

  /** True if a box may be moved, and if not, why. */
  enum Role {
    FREE,
    STAYS_PUT,
    FITS_NOWHERE
  }

  final List<Compartment> places;
  final List<Box> boxes = new ArrayList<>();
  final List<BoxLoad> loads;
  final List<Role> roles = new ArrayList<>();
  final Map<String, Integer> placeIndex = new HashMap<>();

  /** Index in {@link #boxes} of each box of the problem. */
  final List<Integer> free = new ArrayList<>();

  /** By place: mass of loose stock and of boxes that stay, mg. */
  final long[] fixedMassMg;

  final long[] fixedVolumeMm3;
  final long[] usableVolumeMm3;
  final long[] maxLoadMg;
  final long fixedSideMoment;
  final long fixedMoment;
  final long tackleMassMg;

  /** Up to this multiple of the usual tolerance, a rule of thumb, nothing is moved; our choice. */
  private static final double LITTLE_OVER = 1.25;

  /** Largest side moment of the tackle to either side, mg um. */
  final long sideTolerance;

  /** The tolerance set by the angler, if any. */
  final Optional<Settings.SideTolerance> ownTolerance;

  /** By box: minutes a day lost if it does not stand at hand; absent where no hours are known. */
  final Optional<Map<String, Double>> reachMinutes;

  final StowProblem problem;

  StowSetup(Season season, AboardLoads aboard, OnHand onHand) {
    places =
        season.compartments().stream()
            .filter(place -> !place.ashore())
            .sorted(Comparator.comparing(Compartment::name))
            .toList();
    places.forEach(place -> placeIndex.put(place.name(), placeIndex.size()));
    Map<String, Box> byName = season.boxesByName();
    loads = aboard.boxes();
    for (BoxLoad load : loads) {
      Box box = byName.get(load.box());
      boxes.add(box);
      roles.add(role(box));
    }
    int placeCount = places.size();
    fixedMassMg = new long[placeCount];
    fixedVolumeMm3 = new long[placeCount];
    usableVolumeMm3 = new long[placeCount];
    maxLoadMg = new long[placeCount];
    for (LooseLoad loose : aboard.loose()) {
      fixedMassMg[placeIndex.get(loose.compartment())] += loose.weight().milligrams();
    }
    for (int box = 0; box < boxes.size(); box++) {
      if (roles.get(box) == Role.FREE) {
        free.add(box);
      } else {
        int at = placeIndex.get(boxes.get(box).compartment());
        fixedMassMg[at] += loads.get(box).weight().milligrams();
        fixedVolumeMm3[at] += volumeMm3(boxes.get(box));
      }
    }
    long side = 0;
    long moment = 0;
    long mass = 0;
    for (int at = 0; at < placeCount; at++) {
      Compartment place = places.get(at);
      side += fixedMassMg[at] * place.fromCentreline().micrometres();
      moment += fixedMassMg[at] * place.fromTransom().micrometres();
      mass += fixedMassMg[at];
      maxLoadMg[at] = place.maxLoad().map(Mass::milligrams).orElse(StowProblem.UNLIMITED);
      usableVolumeMm3[at] =
          place
              .size()
              .map(size -> usable(size.volumeM3(), season.settings().fillFactorShare()))
              .orElse(StowProblem.UNLIMITED);
    }
    for (int box : free) {
      mass += loads.get(box).weight().milligrams();
    }
    fixedSideMoment = side;
    fixedMoment = moment;
    tackleMassMg = mass;
    ownTolerance = season.settings().sideTolerance();
    sideTolerance =
        ownTolerance
            .map(own -> Math.round(own.kgM() * 1e12))
            .orElse(usualTolerance(season.settings().units(), mass));
    reachMinutes = Reach.minutesByBox(season, onHand);
    problem = problem(season.settings().reachWorth());
  }

  /** Side moment of the tackle as it stands, to whichever side, mg um. */
  long pullNow() {
    return Math.abs(fixedSideMoment + problem.sideMoment(problem.now()));
  }

  /**
   * True if the side moment exceeds the usual tolerance by so little that no box is moved for it
   * alone. The best plan often lies at the tolerance; a few pieces lost or bought since must not
   * undo it.
   */
  boolean pullsLittle() {
    long pull = pullNow();
    return ownTolerance.isEmpty() && pull > sideTolerance && pull <= LITTLE_OVER * sideTolerance;
  }

  /** A tenth of the tackle's mass at an arm of 12 in (30 cm), but at least what one notices. */
  private static long usualTolerance(UnitSystem units, long massMg) {
    boolean us = units == UnitSystem.US;
    Length arm = us ? Length.of(12, LengthUnit.INCH) : Length.of(30, LengthUnit.CENTIMETRE);
    double least = us ? LEAST_TOLERANCE_US : LEAST_TOLERANCE_METRIC;
    return Math.max(Math.round(least * 1e12), Math.round(0.1 * massMg * arm.micrometres()));
  }

  /** Rounded up a little, so that a full compartment does not exceed it by rounding. */
  private static long usable(double volumeM3, double fillShare) {
    return (long) Math.ceil(volumeM3 * fillShare * 1e9 * (1 + 1e-9));
  }

  static long volumeMm3(Box box) {
    return box.size().map(size -> (long) Math.floor(size.volumeM3() * 1e9)).orElse(0L);
  }

  private Role role(Box box) {
    if (box.staysPut()) {
      return Role.STAYS_PUT;
    }
    return places.stream().anyMatch(place -> takes(place, box)) ? Role.FREE : Role.FITS_NOWHERE;
  }

  /** True if the box may go there at all, room aside. */
  static boolean takes(Compartment place, Box box) {
    return (place.atHand() || !box.atHand()) && fits(place, box);
  }

  /** True if the box fits in some orientation; true where either size is unknown. */
  static boolean fits(Compartment place, Box box) {
    return place.size().isEmpty()
        || box.size().isEmpty()
        || box.size().get().fitsInto(place.size().get());
  }

  /** Compartments aboard whose position lies outside any boat. */
  List<Compartment> outside() {
    return places.stream()
        .filter(place -> BoatBounds.outside(place.fromTransom(), place.fromCentreline()))
        .toList();
  }

  /** The box with that index in the problem. */
  Box box(int index) {
    return boxes.get(free.get(index));
  }

  /** Distance from the aftmost to the foremost compartment, m. */
  double spanMetres() {
    var stations = places.stream().mapToLong(place -> place.fromTransom().micrometres());
    var range = stations.summaryStatistics();
    return places.isEmpty() ? 0 : (range.getMax() - range.getMin()) * 1e-6;
  }

  /** Weight and moments of the tackle under that assignment. */
  Moment standing(int[] place) {
    long moment = fixedMoment;
    for (int i = 0; i < place.length; i++) {
      moment += problem.weightMg()[i] * places.get(place[i]).fromTransom().micrometres();
    }
    long side = fixedSideMoment + problem.sideMoment(place);
    return new Moment(tackleMassMg * 1e-6, moment * 1e-12, side * 1e-12);
  }

  /** Minutes a day spent reaching boxes under that assignment; absent where no hours are known. */
  OptionalDouble reach(int[] place) {
    if (reachMinutes.isEmpty()) {
      return OptionalDouble.empty();
    }
    double sum = 0;
    for (int i = 0; i < boxes.size(); i++) {
      int index = free.indexOf(i);
      Compartment at =
          places.get(index < 0 ? placeIndex.get(boxes.get(i).compartment()) : place[index]);
      sum += at.atHand() ? 0 : minutes(boxes.get(i));
    }
    return OptionalDouble.of(sum);
  }

  private double minutes(Box box) {
    return reachMinutes.map(all -> all.getOrDefault(box.name(), 0.0)).orElse(0.0);
  }

  /** Weight x station plus what reaching the box is worth, kg m; infinite where it may not go. */
  private double cost(int index, Compartment place, Length reachWorth) {
    Box box = box(index);
    if (!takes(place, box)) {
      return Double.POSITIVE_INFINITY;
    }
    double kilograms = loads.get(free.get(index)).weight().milligrams() * 1e-6;
    double perMinute = reachWorth.micrometres() * 1e-6 * (tackleMassMg * 1e-6);
    double reach = place.atHand() ? 0 : minutes(box) * perMinute;
    return kilograms * (place.fromTransom().micrometres() * 1e-6) + reach;
  }

  private StowProblem problem(Length reachWorth) {
    int boxCount = free.size();
    int placeCount = places.size();
    long[] weight = new long[boxCount];
    long[] volume = new long[boxCount];
    double[][] cost = new double[boxCount][placeCount];
    int[] now = new int[boxCount];
    for (int i = 0; i < boxCount; i++) {
      Box box = box(i);
      weight[i] = loads.get(free.get(i)).weight().milligrams();
      volume[i] = volumeMm3(box);
      now[i] = placeIndex.get(box.compartment());
      for (int at = 0; at < placeCount; at++) {
        cost[i][at] = cost(i, places.get(at), reachWorth);
      }
    }
    long[] offset = new long[placeCount];
    long[] loadRoom = new long[placeCount];
    long[] volumeRoom = new long[placeCount];
    for (int at = 0; at < placeCount; at++) {
      offset[at] = places.get(at).fromCentreline().micrometres();
      loadRoom[at] = Math.max(0, maxLoadMg[at] - fixedMassMg[at]);
      volumeRoom[at] = Math.max(0, usableVolumeMm3[at] - fixedVolumeMm3[at]);
    }
    return new StowProblem(
        weight,
        volume,
        offset,
        loadRoom,
        volumeRoom,
        cost,
        now,
        -sideTolerance - fixedSideMoment,
        sideTolerance - fixedSideMoment);
  }
}
