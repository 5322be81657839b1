package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.units.Mass;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Findings about limits: which are exceeded now, which conflict, and which went unchecked. */
final class StowFindings {
  private final StowSetup setup;
  private final UnitSystem units;
  private final Findings findings = new Findings();

  private StowFindings(Season season, StowSetup setup) {
    this.setup = setup;
    units = season.settings().units();
  }

  /** Findings about the present stow. */
  static Findings about(Season season, AboardLoads aboard, StowSetup setup) {
    StowFindings about = new StowFindings(season, setup);
    about.boxes();
    about.places();
    about.weights();
    return about.findings;
  }

  private void boxes() {
    for (int i = 0; i < setup.boxes.size(); i++) {
      Box box = setup.boxes.get(i);
      Compartment place = setup.places.get(setup.placeIndex.get(box.compartment()));
      if (box.size().isEmpty()) {
        findings.add(Code.BOX_SIZE_UNKNOWN, box.origin().under("Length"), box.name());
      }
      boolean fits = StowSetup.fits(place, box);
      boolean reach = place.atHand() || !box.atHand();
      switch (setup.roles.get(i)) {
        case FITS_NOWHERE -> {
          boolean somewhere = setup.places.stream().anyMatch(other -> StowSetup.fits(other, box));
          String which = somewhere ? " that is at hand" : "";
          findings.add(Code.BOX_FITS_NOWHERE, box.origin().under("Box"), box.name(), which);
        }
        case STAYS_PUT -> {
          if (!fits) {
            fixed(box, "it does not fit there");
          }
          if (!reach) {
            fixed(box, "it should be at hand and this compartment is not");
          }
        }
        case FREE -> {
          if (!fits) {
            findings.add(
                Code.BOX_DOES_NOT_FIT, box.origin().under("Compartment"), box.name(), place.name());
          }
          if (!reach) {
            findings.add(
                Code.BOX_NOT_AT_HAND, box.origin().under("Compartment"), box.name(), place.name());
          }
        }
        default -> throw new IllegalStateException("no such role");
      }
    }
  }

  private void fixed(Box box, String why) {
    findings.add(
        Code.FIXED_BOX_AGAINST_LIMIT,
        box.origin().under("Stays put"),
        box.name(),
        box.compartment(),
        why);
  }

  private void places() {
    long[] boxMass = setup.problem.sums(setup.problem.weightMg(), setup.problem.now());
    long[] boxVolume = setup.problem.sums(setup.problem.volumeMm3(), setup.problem.now());
    for (int at = 0; at < setup.places.size(); at++) {
      Compartment place = setup.places.get(at);
      if (place.size().isEmpty()) {
        findings.add(Code.COMPARTMENT_SIZE_UNKNOWN, place.origin().under("Length"), place.name());
      }
      if (place.maxLoad().isEmpty()) {
        findings.add(Code.NO_MAX_LOAD, place.origin().under("Max load"), place.name());
      }
      long limit = setup.maxLoadMg[at];
      long fixedMass = setup.fixedMassMg[at];
      long mass = fixedMass + boxMass[at];
      if (mass > limit) {
        String over = mass(mass - limit);
        findings.add(
            Code.COMPARTMENT_OVER_LOAD,
            place.origin(),
            place.name(),
            mass(mass),
            over,
            mass(limit));
      }
      long room = setup.usableVolumeMm3[at];
      long fixedVolume = setup.fixedVolumeMm3[at];
      long volume = fixedVolume + boxVolume[at];
      if (volume > room) {
        String over = volume(volume - room);
        findings.add(
            Code.COMPARTMENT_OVER_VOLUME,
            place.origin(),
            place.name(),
            volume(volume),
            over,
            volume(room));
      }
      if (fixedMass > limit) {
        String over = mass(fixedMass - limit);
        findings.add(Code.FIXED_OVER_LIMIT, place.origin(), place.name(), over, "max load");
      }
      if (fixedVolume > room) {
        String over = volume(fixedVolume - room);
        findings.add(Code.FIXED_OVER_LIMIT, place.origin(), place.name(), over, "usable volume");
      }
    }
  }

  /**
   * Reports a side moment over the tolerance, now or in the plan.
   *
   * @param tried the problem that was solved; its side limits may be wider than the tolerance
   */
  static void side(Season season, StowSetup setup, StowProblem tried, Findings findings) {
    UnitSystem units = season.settings().units();
    long now = setup.fixedSideMoment + setup.problem.sideMoment(setup.problem.now());
    boolean kept = tried == setup.problem;
    if (kept && Math.abs(now) <= setup.sideTolerance) {
      return;
    }
    findings.add(
        setup.ownTolerance.isPresent() ? Code.SIDE_OVER_TOLERANCE : Code.SIDE_OVER_USUAL,
        setup.ownTolerance.map(own -> own.origin()).orElse(Cell.NOWHERE),
        now > 0 ? "starboard" : "port",
        Spoken.moment(Math.abs(now) * 1e-12, units),
        Spoken.moment(setup.sideTolerance * 1e-12, units),
        kept && setup.free.isEmpty()
            ? "no box may be moved that would mend it"
            : kept
                ? "the stow plan keeps to it"
                : setup.pullsLittle() && tried.sideHighest() != StowProblem.UNLIMITED
                    ? "so little over that no box is moved for it alone; the stow plan pulls no more"
                    : tried.sideHighest() == StowProblem.UNLIMITED
                        ? "no plan was found that keeps to it and to the other limits: left out of the plan"
                        : "no plan was found that keeps to it: the stow plan pulls no more than now");
  }

  /** Boxes alone: pieces without a weight are told once for their style. */
  private void weights() {
    for (int i = 0; i < setup.boxes.size(); i++) {
      BoxLoad load = setup.loads.get(i);
      if (!load.emptyWeightKnown()) {
        findings.add(
            Code.BOX_WEIGHT_UNKNOWN,
            setup.boxes.get(i).origin().under("Empty weight"),
            load.box(),
            Spoken.mass(load.weight(), units));
      }
    }
  }

  /**
   * Reports that no plan keeps every limit: which limits the closest plan exceeds, by how much, and
   * which kind of limit would have to give way.
   *
   * @param closest place of each box in the plan of least constraint violation
   * @param proven whether infeasibility is proven
   */
  static Finding conflict(Season season, StowSetup setup, int[] closest, boolean proven) {
    List<String> broken = new StowFindings(season, setup).broken(closest);
    return Finding.of(
        Code.NO_STOW_PLAN,
        Cell.ofSheet("Boxes"),
        proven ? "no plan keeps every limit" : "no plan that keeps every limit was found",
        broken.isEmpty() ? "several limits conflict" : String.join("; ", broken),
        remedy(setup.problem));
  }

  private List<String> broken(int[] places) {
    StowProblem problem = setup.problem;
    List<String> broken = new ArrayList<>();
    long[] load = problem.sums(problem.weightMg(), places);
    long[] volume = problem.sums(problem.volumeMm3(), places);
    for (int at = 0; at < problem.placeCount(); at++) {
      String name = setup.places.get(at).name();
      long overLoad = load[at] - problem.loadRoomMg()[at];
      if (overLoad > 0) {
        broken.add(name + " is " + mass(overLoad) + " over its max load");
      }
      long overVolume = volume[at] - problem.volumeRoomMm3()[at];
      if (overVolume > 0) {
        broken.add(name + " is " + volume(overVolume) + " over its usable volume");
      }
    }
    return broken;
  }

  private static String remedy(StowProblem problem) {
    StowProblem free = problem.withSides(-StowProblem.UNLIMITED, StowProblem.UNLIMITED);
    List<String> ways = new ArrayList<>();
    if (solvable(free.without(true, false))) {
      ways.add("max loads");
    }
    if (solvable(free.without(false, true))) {
      ways.add("volumes");
    }
    return ways.isEmpty()
        ? "; more than one kind of limit is in the way"
        : "; there is a plan without the " + String.join(", or without the ", ways);
  }

  private static boolean solvable(StowProblem problem) {
    return new StowSolver(problem, Effort.FEASIBLE).best().found();
  }

  private String mass(long milligrams) {
    return Spoken.mass(new Mass(milligrams), units);
  }

  private String volume(long mm3) {
    return Spoken.volume(mm3 * 1e-6, units);
  }
}
