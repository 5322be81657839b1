package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.season.Box;

/** A line for each box aboard: where it goes, with which step and why. */
final class BoxPlans {
  private final StowSetup setup;
  private final StowProblem problem;

  private BoxPlans(StowSetup setup) {
    this.setup = setup;
    problem = setup.problem;
  }

  /**
   * All boxes in the order of the workbook.
   *
   * @param recommended place of each box of the problem
   * @param best their places in the best plan; absent where there is none
   * @param order the steps to the recommended plan
   */
  static List<BoxPlan> of(
      StowSetup setup, int[] recommended, Optional<int[]> best, List<MoveOrder.Entry> order) {
    return new BoxPlans(setup).rows(recommended, best, order);
  }

  private List<BoxPlan> rows(int[] recommended, Optional<int[]> best, List<MoveOrder.Entry> order) {
    int[] step = new int[problem.boxCount];
    for (MoveOrder.Entry entry : order) {
      if (entry.number().isPresent()) {
        step[entry.box()] = entry.number().getAsInt();
        if (entry.other() >= 0) {
          step[entry.other()] = entry.number().getAsInt() + 1;
        }
      }
    }
    List<BoxPlan> plans = new ArrayList<>();
    for (int i = 0; i < setup.boxes.size(); i++) {
      Box box = setup.boxes.get(i);
      int free = setup.free.indexOf(i);
      String to = free < 0 ? box.compartment() : setup.places.get(recommended[free]).name();
      Optional<String> bestPlace =
          free < 0
              ? Optional.of(box.compartment())
              : best.map(places -> setup.places.get(places[free]).name());
      plans.add(
          new BoxPlan(
              box.name(),
              setup.loads.get(i).weight(),
              setup.loads.get(i).weightKnown(),
              box.compartment(),
              to,
              free >= 0 && step[free] > 0 ? OptionalInt.of(step[free]) : OptionalInt.empty(),
              bestPlace,
              reason(i, free, recommended, best),
              box.origin()));
    }
    return plans;
  }

  private String reason(int index, int free, int[] recommended, Optional<int[]> best) {
    Box box = setup.boxes.get(index);
    if (free < 0) {
      return box.staysPut() ? "stays put" : "fits into no compartment aboard";
    }
    int from = problem.now[free];
    int to = recommended[free];
    if (from == to) {
      if (best.isEmpty()) {
        return "no plan within all limits";
      }
      return best.get()[free] == from ? "stands well" : "moving it would gain little";
    }
    if (!StowSetup.fits(setup.places.get(from), box)) {
      return "does not fit where it is";
    }
    if (!problem.allowed[free][from]) {
      return "to be at hand";
    }
    int aft = Long.compare(problem.stationUm[from], problem.stationUm[to]);
    if (aft == 0) {
      return "for balance or room";
    }
    return aft > 0 ? "weight goes aft" : "makes room further aft";
  }
}
