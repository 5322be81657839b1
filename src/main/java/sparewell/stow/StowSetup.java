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
 * The season as a stowing problem: which boxes may move, what stays and is taken off the limits,
 * and the way back from numbers to names. Boxes and compartments stand in the order of their names,
 * so that the order of the rows settles nothing.
 */
final class StowSetup {
  /** Least side tolerance where none is set: 60 lb in, or 70 kg cm, kg m. */
  private static final double LEAST_TOLERANCE_US = 60 * 0.45359237 * 0.0254;

  private static final double LEAST_TOLERANCE_METRIC = 0.7;

  /** Why a box is not moved, or FREE where it may be. */
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

  /** Index among the boxes of each box of the problem. */
  final List<Integer> free = new ArrayList<>();

  /** Mass of loose stock and of boxes that stay, by place, mg. */
  final long[] fixedMassMg;

  final long[] fixedVolumeMm3;
  final long[] usableVolumeMm3;
  final long[] maxLoadMg;
  final long fixedSideMoment;
  final long fixedMoment;
  final long tackleMassMg;

  /** How far over the usual tolerance, a rule of thumb, nothing is moved for it; our choice. */
  private static final double LITTLE_OVER = 1.25;

  /** Most side moment of the tackle either way, mg um. */
  final long sideTolerance;

  /** The angler's own, where that is set. */
  final Optional<Settings.SideTolerance> ownTolerance;

  /** What each box costs a day if it does not stand at hand; absent where no hours are known. */
  final Optional<Map<String, Double>> reachMinutes;

  /** By box of the problem and place: weight x station, and what reaching it is worth, kg m. */
  final double[][] weighed;

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
    weighed = weighed(season.settings().reachWorth());
    problem = problem();
  }

  /** What the tackle pulls to either side as it stands, mg um. */
  long pullNow() {
    return Math.abs(fixedSideMoment + problem.sideMoment(problem.now));
  }

  /**
   * Whether that is over the usual tolerance by so little that no box is moved for it alone. The
   * best plan often stands at the tolerance, and a few pieces lost or bought since must not undo
   * it.
   */
  boolean pullsLittle() {
    long pull = pullNow();
    return ownTolerance.isEmpty() && pull > sideTolerance && pull <= LITTLE_OVER * sideTolerance;
  }

  /** A tenth of the tackle's mass at 12 in (30 cm), but not less than anyone would notice. */
  private static long usualTolerance(UnitSystem units, long massMg) {
    boolean us = units == UnitSystem.US;
    Length arm = us ? Length.of(12, LengthUnit.INCH) : Length.of(30, LengthUnit.CENTIMETRE);
    double least = us ? LEAST_TOLERANCE_US : LEAST_TOLERANCE_METRIC;
    return Math.max(Math.round(least * 1e12), Math.round(0.1 * massMg * arm.micrometres()));
  }

  /** A hair more than the product, so that a full compartment is not over by rounding. */
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

  /** Whether the place could hold the box if it held nothing else that moves. */
  static boolean takes(Compartment place, Box box) {
    return (place.atHand() || !box.atHand()) && fits(place, box);
  }

  /** Whether the box goes in, in some orientation; where a size is blank that is not checked. */
  static boolean fits(Compartment place, Box box) {
    return place.size().isEmpty()
        || box.size().isEmpty()
        || box.size().get().fitsInto(place.size().get());
  }

  /** The compartments aboard that are said to stand on no boat. */
  List<Compartment> outside() {
    return places.stream()
        .filter(place -> BoatBounds.outside(place.fromTransom(), place.fromCentreline()))
        .toList();
  }

  /** The box of that index in the problem. */
  Box box(int index) {
    return boxes.get(free.get(index));
  }

  /** Distance from the hindmost to the foremost compartment, m. */
  double spanMetres() {
    var stations = places.stream().mapToLong(place -> place.fromTransom().micrometres());
    var range = stations.summaryStatistics();
    return places.isEmpty() ? 0 : (range.getMax() - range.getMin()) * 1e-6;
  }

  /** The tackle with the boxes of the problem as assigned. */
  Moment standing(int[] place) {
    long moment = fixedMoment;
    for (int i = 0; i < place.length; i++) {
      moment += problem.weightMg[i] * places.get(place[i]).fromTransom().micrometres();
    }
    long side = fixedSideMoment + problem.sideMoment(place);
    return new Moment(tackleMassMg * 1e-6, moment * 1e-12, side * 1e-12);
  }

  /** What is minimised, as assigned, also where the plan breaks limits, kg m. */
  double weighed(int[] place) {
    double sum = 0;
    for (int i = 0; i < place.length; i++) {
      sum += weighed[i][place[i]];
    }
    return sum;
  }

  /** Minutes a day spent reaching boxes, as assigned; absent where no hours are known. */
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

  private double[][] weighed(Length reachWorth) {
    double[][] sums = new double[free.size()][places.size()];
    double perMinute = reachWorth.micrometres() * 1e-6 * (tackleMassMg * 1e-6);
    for (int i = 0; i < sums.length; i++) {
      double kilograms = loads.get(free.get(i)).weight().milligrams() * 1e-6;
      for (int at = 0; at < sums[i].length; at++) {
        Compartment place = places.get(at);
        double reach = place.atHand() ? 0 : minutes(box(i)) * perMinute;
        sums[i][at] = kilograms * (place.fromTransom().micrometres() * 1e-6) + reach;
      }
    }
    return sums;
  }

  private StowProblem problem() {
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
        cost[i][at] = takes(places.get(at), box) ? weighed[i][at] : Double.POSITIVE_INFINITY;
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
