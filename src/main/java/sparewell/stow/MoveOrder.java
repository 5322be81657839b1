package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Puts moves into an order that can be carried out: a box goes only where there is room for it at
 * that moment. Where the boxes left block each other, two change places, or one is lifted out until
 * its room is free.
 */
final class MoveOrder {
  private static final int OUTSIDE = -1;
  private static final int NO_BOX = -1;

  private final StowProblem problem;
  private final int[] target;
  private final int[] at;
  private final long[] load;
  private final long[] volume;
  private final List<String> boxes;
  private final List<String> places;
  private final List<MoveStep> steps = new ArrayList<>();
  private int number = 1;

  private MoveOrder(StowProblem problem, int[] target, List<String> boxes, List<String> places) {
    this.problem = problem;
    this.target = target;
    this.boxes = boxes;
    this.places = places;
    at = problem.now().clone();
    load = new long[problem.placeCount()];
    volume = new long[problem.placeCount()];
    for (int box = 0; box < problem.boxCount(); box++) {
      fill(box, at[box], 1);
    }
  }

  /**
   * The steps from the present stow to the target; each box is moved once. Where the present stow
   * breaks limits, so may what is left of it on the way, but never a place that a box is put into.
   *
   * @param target place of each box, within all limits
   * @param boxes names of the boxes
   * @param places names of the places
   */
  static List<MoveStep> of(
      StowProblem problem, int[] target, List<String> boxes, List<String> places) {
    MoveOrder order = new MoveOrder(problem, target, boxes, places);
    order.carryOut();
    return order.steps;
  }

  private void carryOut() {
    while (true) {
      int next = movable();
      if (next != NO_BOX) {
        boolean outside = at[next] == OUTSIDE;
        MoveStep.Kind kind = outside ? MoveStep.Kind.PUT_IN : MoveStep.Kind.MOVE;
        int from = problem.now()[next];
        put(next);
        add(kind, OptionalInt.of(number++), next, from, NO_BOX);
      } else if (!swap() && !liftOut()) {
        return;
      }
    }
  }

  /** The box whose move can be done now; of several the one that frees the most room. */
  private int movable() {
    int found = NO_BOX;
    for (int box = 0; box < problem.boxCount(); box++) {
      if (at[box] != target[box] && roomFor(box, target[box])) {
        boolean better =
            found == NO_BOX
                || (at[box] == OUTSIDE && at[found] != OUTSIDE)
                || (at[found] != OUTSIDE && problem.volumeMm3()[box] > problem.volumeMm3()[found]);
        found = better ? box : found;
      }
    }
    return found;
  }

  private boolean roomFor(int box, int place) {
    return roomFor(box, place, NO_BOX);
  }

  /** True if the box finds room once {@code leaving} is gone from where it stands. */
  private boolean roomFor(int box, int place, int leaving) {
    boolean leaves = leaving != NO_BOX && at[leaving] == place;
    long loadThen =
        load[place] - (leaves ? problem.weightMg()[leaving] : 0) + problem.weightMg()[box];
    long volumeThen =
        volume[place] - (leaves ? problem.volumeMm3()[leaving] : 0) + problem.volumeMm3()[box];
    return loadThen <= problem.loadRoomMg()[place] && volumeThen <= problem.volumeRoomMm3()[place];
  }

  private void add(MoveStep.Kind kind, OptionalInt its, int box, int from, int other) {
    long side = 0;
    for (int one = 0; one < at.length; one++) {
      side += at[one] == OUTSIDE ? 0 : problem.weightMg()[one] * problem.offsetUm()[at[one]];
    }
    steps.add(
        new MoveStep(
            kind,
            its,
            boxes.get(box),
            places.get(from),
            places.get(target[box]),
            other == NO_BOX ? "" : boxes.get(other),
            over(side) > Math.max(0, over(problem.sideMoment(problem.now())))));
  }

  /** By how much a side moment lies outside its limits, mg um; negative within them. */
  private long over(long side) {
    return Math.max(side - problem.sideHighest(), problem.sideLowest() - side);
  }

  private void fill(int box, int place, int sign) {
    load[place] += sign * problem.weightMg()[box];
    volume[place] += sign * problem.volumeMm3()[box];
  }

  private void put(int box) {
    if (at[box] != OUTSIDE) {
      fill(box, at[box], -1);
    }
    fill(box, target[box], 1);
    at[box] = target[box];
  }

  private boolean swap() {
    for (int one = 0; one < problem.boxCount(); one++) {
      for (int two = one + 1; two < problem.boxCount(); two++) {
        int from = at[one];
        int to = target[one];
        boolean crossed = from != to && at[two] == to && target[two] == from;
        if (crossed && roomFor(one, to, two) && roomFor(two, from, one)) {
          put(one);
          put(two);
          add(MoveStep.Kind.SWAP, OptionalInt.of(number), one, from, two);
          number += 2;
          return true;
        }
      }
    }
    return false;
  }

  /** Lifts out the box that lets most others move after it; of equals the smallest. */
  private boolean liftOut() {
    int found = NO_BOX;
    int most = -1;
    for (int box = 0; box < problem.boxCount(); box++) {
      if (at[box] == target[box] || at[box] == OUTSIDE) {
        continue;
      }
      int freed = 0;
      for (int other = 0; other < problem.boxCount(); other++) {
        if (at[other] != target[other] && roomFor(other, target[other], box)) {
          freed++;
        }
      }
      if (freed > most
          || (freed == most && problem.volumeMm3()[box] < problem.volumeMm3()[found])) {
        found = box;
        most = freed;
      }
    }
    if (found == NO_BOX) {
      return false;
    }
    int from = at[found];
    fill(found, from, -1);
    at[found] = OUTSIDE;
    add(MoveStep.Kind.LIFT_OUT, OptionalInt.empty(), found, from, NO_BOX);
    return true;
  }
}
