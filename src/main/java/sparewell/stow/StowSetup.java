package sparewell.stow;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.UnitSystem;

/**
 * The season as a stowing problem: which boxes may move, what stays and is taken off the limits,
 * and the way back from numbers to names.
 */
final class StowSetup {
  /** Why a box is not moved, or FREE where it may be. */
  enum Role {
    FREE,
    STAYS_PUT,
    FITS_NOWHERE
  }

  final List<Compartment> places = new ArrayList<>();
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
  final long sideTolerance;
  final StowProblem problem;

  StowSetup(Season season, AboardLoads aboard) {
    for (Compartment compartment : season.compartments()) {
      if (!compartment.ashore()) {
        placeIndex.put(compartment.name(), places.size());
        places.add(compartment);
      }
    }
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
    sideTolerance = sideTolerance(season, mass);
    problem = problem();
  }

  /** Most side moment of the tackle either way, mg um: as set, else 10 % of its mass x 12 in. */
  private static long sideTolerance(Season season, long massMg) {
    if (season.settings().sideToleranceKgM().isPresent()) {
      return Math.round(season.settings().sideToleranceKgM().getAsDouble() * 1e12);
    }
    Length arm =
        season.settings().units() == UnitSystem.US
            ? Length.of(12, LengthUnit.INCH)
            : Length.of(30, LengthUnit.CENTIMETRE);
    return Math.round(0.1 * massMg * arm.micrometres());
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

  /** The box of that index in the problem. */
  Box box(int index) {
    return boxes.get(free.get(index));
  }

  private StowProblem problem() {
    int boxCount = free.size();
    int placeCount = places.size();
    long[] weight = new long[boxCount];
    long[] volume = new long[boxCount];
    boolean[][] allowed = new boolean[boxCount][placeCount];
    int[] now = new int[boxCount];
    for (int i = 0; i < boxCount; i++) {
      Box box = box(i);
      weight[i] = loads.get(free.get(i)).weight().milligrams();
      volume[i] = volumeMm3(box);
      now[i] = placeIndex.get(box.compartment());
      for (int at = 0; at < placeCount; at++) {
        allowed[i][at] = takes(places.get(at), box);
      }
    }
    long[] station = new long[placeCount];
    long[] offset = new long[placeCount];
    long[] loadRoom = new long[placeCount];
    long[] volumeRoom = new long[placeCount];
    for (int at = 0; at < placeCount; at++) {
      station[at] = places.get(at).fromTransom().micrometres();
      offset[at] = places.get(at).fromCentreline().micrometres();
      loadRoom[at] = Math.max(0, maxLoadMg[at] - fixedMassMg[at]);
      volumeRoom[at] = Math.max(0, usableVolumeMm3[at] - fixedVolumeMm3[at]);
    }
    return new StowProblem(
        weight,
        volume,
        station,
        offset,
        loadRoom,
        volumeRoom,
        allowed,
        now,
        -sideTolerance - fixedSideMoment,
        sideTolerance - fixedSideMoment);
  }
}
