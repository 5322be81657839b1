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
  private final StowProblem problem;
  private final int[] target;
  private final int[] at;
  private final long[] load;
  private final long[] volume;
  private final List<Entry> entries = new ArrayList<>();
  private int number = 1;

  /** A step by numbers; {@code other} is -1 but for a swap. */
  record Entry(MoveStep.Kind kind, OptionalInt number, int box, int from, int to, int other) {}

  private MoveOrder(StowProblem problem, int[] target) {
    this.problem = problem;
    this.target = target;
    at = problem.now.clone();
    load = new long[problem.placeCount];
    volume = new long[problem.placeCount];
    for (int box = 0; box < problem.boxCount; box++) {
      fill(box, at[box], 1);
    }
  }

  /** The steps from the present stow to the target. */
  static List<Entry> of(StowProblem problem, int[] target) {
    MoveOrder order = new MoveOrder(problem, target);
    order.carryOut();
    return order.entries;
  }

  private static final int OUTSIDE = -1;

  private void carryOut() {
    while (true) {
      int next = movable();
      if (next >= 0) {
        boolean outside = at[next] == OUTSIDE;
        int from = outside ? problem.now[next] : at[next];
        put(next);
        MoveStep.Kind kind = outside ? MoveStep.Kind.PUT_IN : MoveStep.Kind.MOVE;
        entries.add(new Entry(kind, OptionalInt.of(number++), next, from, target[next], -1));
      } else if (!swap() && !liftOut()) {
        return;
      }
    }
  }

  /** The box whose move can be done now; of several the one that frees the most room. */
  private int movable() {
    int found = -1;
    for (int box = 0; box < problem.boxCount; box++) {
      if (at[box] != target[box] && roomFor(box, target[box])) {
        boolean better =
            found < 0
                || (at[box] == OUTSIDE && at[found] != OUTSIDE)
                || (at[found] != OUTSIDE && problem.volumeMm3[box] > problem.volumeMm3[found]);
        found = better ? box : found;
      }
    }
    return found;
  }

  private boolean roomFor(int box, int place) {
    return load[place] + problem.weightMg[box] <= problem.loadRoomMg[place]
        && volume[place] + problem.volumeMm3[box] <= problem.volumeRoomMm3[place];
  }

  private void fill(int box, int place, int sign) {
    load[place] += sign * problem.weightMg[box];
    volume[place] += sign * problem.volumeMm3[box];
  }

  private void put(int box) {
    if (at[box] != OUTSIDE) {
      fill(box, at[box], -1);
    }
    fill(box, target[box], 1);
    at[box] = target[box];
  }

  private void takeOut(int box) {
    fill(box, at[box], -1);
    at[box] = OUTSIDE;
  }

  private boolean swap() {
    for (int one = 0; one < problem.boxCount; one++) {
      for (int two = one + 1; two < problem.boxCount; two++) {
        if (at[one] == target[one]
            || at[two] == target[two]
            || at[one] == OUTSIDE
            || at[one] != target[two]
            || at[two] != target[one]) {
          continue;
        }
        int from = at[one];
        int to = at[two];
        takeOut(one);
        takeOut(two);
        boolean fits = roomFor(one, to) && roomFor(two, from);
        at[one] = from;
        at[two] = to;
        fill(one, from, 1);
        fill(two, to, 1);
        if (fits) {
          entries.add(new Entry(MoveStep.Kind.SWAP, OptionalInt.of(number), one, from, to, two));
          number += 2;
          put(one);
          put(two);
          return true;
        }
      }
    }
    return false;
  }

  /** Lifts out the box that lets most others move after it; of equals the smallest. */
  private boolean liftOut() {
    int found = -1;
    int most = -1;
    for (int box = 0; box < problem.boxCount; box++) {
      if (at[box] == target[box] || at[box] == OUTSIDE) {
        continue;
      }
      int from = at[box];
      takeOut(box);
      int freed = 0;
      for (int other = 0; other < problem.boxCount; other++) {
        if (other != box && at[other] != target[other] && roomFor(other, target[other])) {
          freed++;
        }
      }
      at[box] = from;
      fill(box, from, 1);
      if (freed > most || (freed == most && problem.volumeMm3[box] < problem.volumeMm3[found])) {
        found = box;
        most = freed;
      }
    }
    if (found < 0) {
      return false;
    }
    entries.add(
        new Entry(
            MoveStep.Kind.LIFT_OUT, OptionalInt.empty(), found, at[found], target[found], -1));
    takeOut(found);
    return true;
  }
}
