package sparewell.stow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.season.Box;
import sparewell.season.Compartment;

/** A line for each box aboard: where it goes, with which step and why. */
final class BoxPlans {
  private final StowSetup setup;
  private final StowProblem problem;
  private final int[] recommended;
  private final Optional<int[]> best;
  private final Map<String, Integer> numbers = new HashMap<>();
  private final Reason withoutPlan;

  private BoxPlans(StowSetup setup, int[] recommended, Optional<int[]> best, Reason withoutPlan) {
    this.setup = setup;
    problem = setup.problem;
    this.recommended = recommended;
    this.best = best;
    this.withoutPlan = withoutPlan;
  }

  /**
   * All boxes: those that move in the order of their steps, then the others by name.
   *
   * @param recommended place of each box of the problem
   * @param best their places in the best plan; absent where there is none
   * @param steps the steps to the recommended plan
   * @param withoutPlan why boxes stay where there is no plan
   */
  static List<BoxPlan> of(
      StowSetup setup,
      int[] recommended,
      Optional<int[]> best,
      List<MoveStep> steps,
      Reason withoutPlan) {
    BoxPlans plans = new BoxPlans(setup, recommended, best, withoutPlan);
    for (MoveStep step : steps) {
      step.number().ifPresent(number -> plans.numbers.put(step.box(), number));
      // no box is called "", as the other one of a step that is no swap
      step.number().ifPresent(number -> plans.numbers.put(step.swappedWith(), number + 1));
    }
    List<BoxPlan> rows = new ArrayList<>();
    for (int i = 0; i < setup.boxes.size(); i++) {
      rows.add(plans.row(i));
    }
    rows.sort(Comparator.comparing(row -> row.step().orElse(Integer.MAX_VALUE)));
    return rows;
  }

  private BoxPlan row(int index) {
    Box box = setup.boxes.get(index);
    BoxLoad load = setup.loads.get(index);
    int free = setup.free.indexOf(index);
    Integer number = numbers.get(box.name());
    return new BoxPlan(
        box.name(),
        load.weight(),
        load.weightKnown(),
        box.compartment(),
        free < 0 ? box.compartment() : name(recommended[free]),
        number == null ? OptionalInt.empty() : OptionalInt.of(number),
        free < 0 ? Optional.of(box.compartment()) : best.map(places -> name(places[free])),
        free < 0 ? stays(box) : reason(box, free),
        setup
            .reachMinutes
            .map(all -> OptionalDouble.of(all.getOrDefault(box.name(), 0.0)))
            .orElse(OptionalDouble.empty()),
        box.origin());
  }

  private String name(int place) {
    return setup.places.get(place).name();
  }

  private static Reason stays(Box box) {
    return box.staysPut() ? Reason.STAYS_PUT : Reason.FITS_NOWHERE;
  }

  private Reason reason(Box box, int free) {
    int from = problem.now()[free];
    int to = recommended[free];
    if (from == to) {
      if (best.isEmpty()) {
        return withoutPlan;
      }
      return best.get()[free] == from ? Reason.STANDS_WELL : Reason.GAINS_LITTLE;
    }
    Compartment here = setup.places.get(from);
    Compartment there = setup.places.get(to);
    if (!StowSetup.fits(here, box)) {
      return Reason.DOES_NOT_FIT;
    }
    if (there.atHand() && !here.atHand() && box.atHand()) {
      return Reason.TO_BE_AT_HAND;
    }
    int aft = here.fromTransom().compareTo(there.fromTransom());
    return aft == 0
        ? Reason.BALANCE_OR_ROOM
        : aft > 0 ? Reason.WEIGHT_GOES_AFT : Reason.MAKES_ROOM_AFT;
  }
}
