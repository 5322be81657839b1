package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Limits are kept to the last unit; two boxes of 3 and 4 mg and mm3, places 10 um to each side. */
class StowProblemTest {
  private static final double SHUT = Double.POSITIVE_INFINITY;
  private static final double[][] COST = {{1, 2}, {4, SHUT}};
  private static final long[] AMOUNT = {3, 4};
  private static final long[] ROOMY = {9, 9};
  private static final int[] PARTED = {1, 0};
  private static final int[] TOGETHER = {0, 0};

  private static StowProblem problem(long[] loadRoom, long[] volumeRoom, long low, long high) {
    long[] offset = {-10, 10};
    return new StowProblem(AMOUNT, AMOUNT, offset, loadRoom, volumeRoom, COST, PARTED, low, high);
  }

  private static boolean feasible(long[] loadRoom, long[] volumeRoom, int[] place) {
    return problem(loadRoom, volumeRoom, -1_000, 1_000).feasible(place);
  }

  @Test
  void aPlanKeepsEveryLimit() {
    long[] full = {7, 0};
    long[] tight = {6, 9};
    assertTrue(feasible(full, full, TOGETHER));
    assertFalse(feasible(tight, ROOMY, TOGETHER));
    assertFalse(feasible(ROOMY, tight, TOGETHER));
    assertFalse(feasible(ROOMY, ROOMY, new int[] {0, 1}), "shut to it");
    // 3 x 10 - 4 x 10 to starboard
    assertTrue(problem(ROOMY, ROOMY, -10, -10).feasible(PARTED));
    assertFalse(problem(ROOMY, ROOMY, -9, 0).feasible(PARTED));
    assertFalse(problem(ROOMY, ROOMY, -20, -11).feasible(PARTED));
    assertTrue(problem(ROOMY, ROOMY, -9, 0).withSides(-10, 0).feasible(PARTED));
  }

  @Test
  void limitsAreLiftedOneByOne() {
    long[] none = {0, 0};
    StowProblem problem = problem(none, none, -1_000, 1_000);
    assertTrue(problem.without(true, true).feasible(TOGETHER));
    assertFalse(problem.without(true, false).feasible(TOGETHER));
    assertFalse(problem.without(false, true).feasible(TOGETHER));
    assertEquals(5, problem.cost(TOGETHER));
    assertEquals(1, problem.moves(TOGETHER));
  }
}
