package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Every step is carried out by hand: there is room, and nothing simpler would have done. */
class MoveOrderTest {
  private static final int OUTSIDE = -1;

  /** The boat on the way from the present stow to the target. */
  private static final class Way {
    final StowProblem problem;
    final int[] target;
    final int[] at;
    final Map<MoveStep.Kind, Integer> kinds = new EnumMap<>(MoveStep.Kind.class);
    int next = 1;
    int overSide;

    Way(StowProblem problem, int[] target) {
      this.problem = problem;
      this.target = target;
      at = problem.now().clone();
    }

    boolean room(int box, int place, int... gone) {
      long load = problem.weightMg()[box];
      long volume = problem.volumeMm3()[box];
      for (int other = 0; other < at.length; other++) {
        boolean stays = Arrays.stream(gone).noneMatch(Integer.valueOf(other)::equals);
        if (at[other] == place && stays) {
          load += problem.weightMg()[other];
          volume += problem.volumeMm3()[other];
        }
      }
      return load <= problem.loadRoomMg()[place] && volume <= problem.volumeRoomMm3()[place];
    }

    /** Side moment of the boxes that stand in compartments, mg um. */
    long side() {
      long sum = 0;
      for (int box = 0; box < at.length; box++) {
        if (at[box] != OUTSIDE) {
          sum += problem.weightMg()[box] * problem.offsetUm()[at[box]];
        }
      }
      return sum;
    }

    List<Integer> movable(int... gone) {
      List<Integer> boxes = new ArrayList<>();
      for (int box = 0; box < at.length; box++) {
        if (at[box] != target[box] && room(box, target[box], gone)) {
          boxes.add(box);
        }
      }
      return boxes;
    }

    boolean swappable(int one, int two) {
      return at[one] != target[one]
          && at[one] == target[two]
          && at[two] == target[one]
          && room(one, at[two], two)
          && room(two, at[one], one);
    }

    void carryOut() {
      for (MoveStep step : steps(problem, target)) {
        kinds.merge(step.kind(), 1, Integer::sum);
        int box = Integer.parseInt(step.box());
        assertEquals(Integer.toString(problem.now()[box]), step.from());
        assertEquals(Integer.toString(target[box]), step.to());
        assertFalse(at[box] == target[box], "no box is touched twice");
        switch (step.kind()) {
          case LIFT_OUT -> liftOut(step, box);
          case SWAP -> swap(step, box);
          case MOVE, PUT_IN -> move(step, box);
          default -> throw new IllegalStateException();
        }
        long pull = over(side());
        assertEquals(
            pull > 0 && pull > over(problem.sideMoment(problem.now())), step.overSide(), "pull");
        overSide += step.overSide() ? 1 : 0;
      }
      assertArrayEquals(target, at);
      assertEquals(problem.moves(target), next - 1, "every moved box has its number");
    }

    private long over(long side) {
      return Math.max(side - problem.sideHighest(), problem.sideLowest() - side);
    }

    private void move(MoveStep step, int box) {
      assertEquals(OptionalInt.of(next++), step.number());
      assertEquals("", step.swappedWith());
      boolean outside = at[box] == OUTSIDE;
      assertEquals(outside, step.kind() == MoveStep.Kind.PUT_IN);
      assertTrue(movable().contains(box), "there is room");
      for (int other : movable()) {
        // What lies about outside first, then what frees most room.
        assertTrue(outside || at[other] != OUTSIDE);
        assertTrue(outside || problem.volumeMm3()[other] <= problem.volumeMm3()[box]);
      }
      at[box] = target[box];
    }

    private void swap(MoveStep step, int box) {
      int other = Integer.parseInt(step.swappedWith());
      assertEquals(OptionalInt.of(next), step.number());
      next += 2;
      assertEquals(List.of(), movable(), "no box could go by itself");
      assertTrue(swappable(box, other));
      at[box] = target[box];
      at[other] = target[other];
    }

    private void liftOut(MoveStep step, int box) {
      assertTrue(step.number().isEmpty());
      assertEquals("", step.swappedWith());
      assertFalse(at[box] == OUTSIDE);
      assertEquals(List.of(), movable());
      int freed = movable(box).size();
      for (int one = 0; one < at.length; one++) {
        for (int two = 0; two < at.length; two++) {
          assertFalse(swappable(one, two), "no two could swap");
        }
        if (at[one] != OUTSIDE && at[one] != target[one]) {
          int others = movable(one).size();
          boolean smaller = problem.volumeMm3()[one] < problem.volumeMm3()[box];
          assertTrue(others < freed || others == freed && !smaller, "box " + one + " was better");
        }
      }
      at[box] = OUTSIDE;
    }
  }

  @Test
  void movesOfTightBoatsCanBeCarriedOutInTheirOrder() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = StowCases.problem(14, 5, seed);
      StowSolver.Answer best = new StowSolver(problem, Effort.USUAL).best();
      assertTrue(best.found(), "a plan was planted");
      new Way(problem, best.array()).carryOut();
    }
  }

  /** From any stow to any plan: the boxes stand in each other's way. */
  @Test
  void movesBetweenAnyTwoPlansCanBeCarriedOut() {
    Map<MoveStep.Kind, Integer> kinds = new EnumMap<>(MoveStep.Kind.class);
    int overSide = 0;
    for (int seed = 0; seed < 60; seed++) {
      List<int[]> plans = plans(RandomProblems.of(seed));
      for (int from = 0; from < plans.size(); from += 1 + plans.size() / 16) {
        for (int to = 0; to < plans.size(); to += 1 + plans.size() / 16) {
          Way way = new Way(standing(RandomProblems.of(seed), plans.get(from)), plans.get(to));
          way.carryOut();
          overSide += way.overSide;
          way.kinds.forEach((kind, count) -> kinds.merge(kind, count, Integer::sum));
        }
      }
    }
    for (MoveStep.Kind kind : MoveStep.Kind.values()) {
      assertTrue(kinds.getOrDefault(kind, 0) > 20, kind + " came up: " + kinds);
    }
    assertTrue(overSide > 20, "steps that leave a pull to the side: " + overSide);
  }

  /** The steps, boxes and places being called by their indices. */
  private static List<MoveStep> steps(StowProblem problem, int[] target) {
    List<String> names =
        IntStream.range(0, problem.boxCount() + problem.placeCount())
            .mapToObj(Integer::toString)
            .toList();
    return MoveOrder.of(problem, target, names, names);
  }

  private static StowProblem standing(StowProblem problem, int[] now) {
    ProblemChange change = new ProblemChange(problem);
    change.now = now;
    return change.made();
  }

  private static List<int[]> plans(StowProblem problem) {
    List<int[]> plans = new ArrayList<>();
    int all = (int) Math.pow(problem.placeCount(), problem.boxCount());
    for (int code = 0; code < all; code++) {
      int[] place = new int[problem.boxCount()];
      int rest = code;
      for (int box = 0; box < place.length; box++) {
        place[box] = rest % problem.placeCount();
        rest /= problem.placeCount();
      }
      if (problem.feasible(place)) {
        plans.add(place);
      }
    }
    return plans;
  }

  @Test
  void threeInARingNeedOneLiftedOut() {
    // Each fills its place; the smallest is lifted out, so that the others can follow.
    long none = StowProblem.UNLIMITED;
    StowProblem problem =
        new StowProblem(
            new long[] {9, 9, 9},
            new long[] {80, 70, 90},
            new long[] {-5, 3, 11},
            new long[] {none, none, none},
            new long[] {100, 100, 100},
            new double[3][3],
            new int[] {0, 1, 2},
            -none,
            none);
    int[] target = {1, 2, 0};
    assertEquals(
        List.of("LIFT_OUT 1", "MOVE 0", "MOVE 2", "PUT_IN 1"),
        steps(problem, target).stream().map(step -> step.kind() + " " + step.box()).toList());
    new Way(problem, target).carryOut();
  }
}
