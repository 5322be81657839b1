package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The best set for a place, against every subset. */
class KnapsackTest {
  private static final int BOXES = 10;

  @Test
  void givesTheMostValuableSetUnderBothLimits() {
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      long[] volume = random.longs(BOXES, 0, 60).toArray();
      long[] load = random.longs(BOXES, 0, 60).toArray();
      Knapsack knapsack = new Knapsack(volume, load);
      for (int turn = 0; turn < 4; turn++) {
        double[] worth = random.doubles(BOXES, -0.3, 1).toArray();
        long volumeRoom = random.nextInt(3) == 0 ? 1_000 : random.nextInt(200);
        long loadRoom = random.nextInt(3) == 0 ? 1_000 : random.nextInt(200);
        double best = best(worth, volume, load, volumeRoom, loadRoom);
        assertEquals(best, knapsack.solve(worth, volumeRoom, loadRoom), 1e-9);
        double held = 0;
        long volumes = 0;
        long loads = 0;
        for (int box = 0; box < BOXES; box++) {
          if (knapsack.holds(box)) {
            held += worth[box];
            volumes += volume[box];
            loads += load[box];
          }
        }
        assertEquals(best, held, 1e-9);
        assertTrue(volumes <= volumeRoom && loads <= loadRoom);
      }
    }
  }

  /** Once it leans to the limit that counts, its bound spares all but a few sets. */
  @Test
  void manyBoxesAreSolvedWithinFewSets() {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      long[] wide = random.longs(40, 1, 60).toArray();
      long[] heavy = random.longs(40, 1, 60).toArray();
      double[] worth = random.doubles(40, 0.1, 1).toArray();
      Knapsack byVolume = new Knapsack(wide, heavy);
      Knapsack byLoad = new Knapsack(heavy, wide);
      for (int turn = 0; turn < 12; turn++) {
        long before = byVolume.work() + byLoad.work();
        double volume = byVolume.solve(worth, 300, 1_000_000);
        double load = byLoad.solve(worth, 1_000_000, 300);
        if (turn > 9) {
          assertEquals(best(worth, wide, 300), volume, 1e-9, "seed " + seed);
          assertEquals(volume, load, 1e-9, "seed " + seed);
          assertTrue(byVolume.work() + byLoad.work() - before < 400, "seed " + seed);
        }
      }
    }
  }

  /** Worth little more than the volume: hardly a search ends. */
  @Test
  void aSearchCutShortGivesTheBoundOfLinearProgramming() {
    int cut = 0;
    for (int seed = 0; seed < 40; seed++) {
      long[] volume = new Random(seed).longs(50, 200, 300).sorted().toArray();
      double[] worth = Arrays.stream(volume).mapToDouble(one -> one + 10).toArray();
      Knapsack knapsack = new Knapsack(volume, new long[50]);
      long before = 0;
      double found = 0;
      for (int turn = 0; turn < 12; turn++) {
        before = knapsack.work();
        found = knapsack.solve(worth, 3_001, 1);
      }
      double bound = 0;
      double room = 3_001;
      for (int box = 0; room > 0; box++) {
        bound += worth[box] * Math.min(1, room / volume[box]);
        room -= volume[box];
      }
      boolean ended = knapsack.work() - before <= 50 + Knapsack.NODE_LIMIT;
      assertEquals(ended ? best(worth, volume, 3_001) : bound, found, 1e-9, "seed " + seed);
      cut += ended ? 0 : 1;
    }
    assertTrue(cut > 20, "searches cut short: " + cut);
  }

  /** The best under the one limit, by dynamic programming. */
  private static double best(double[] worth, long[] volume, int room) {
    double[] best = new double[room + 1];
    for (int box = 0; box < worth.length; box++) {
      for (int left = room; left >= volume[box]; left--) {
        best[left] = Math.max(best[left], best[left - (int) volume[box]] + worth[box]);
      }
    }
    return best[room];
  }

  private static double best(
      double[] worth, long[] volume, long[] load, long volumeRoom, long loadRoom) {
    double best = 0;
    for (int set = 0; set < 1 << BOXES; set++) {
      double sum = 0;
      long volumes = 0;
      long loads = 0;
      for (int i = 0; i < BOXES; i++) {
        if ((set >> i & 1) == 1) {
          sum += worth[i];
          volumes += volume[i];
          loads += load[i];
        }
      }
      best = volumes <= volumeRoom && loads <= loadRoom ? Math.max(best, sum) : best;
    }
    return best;
  }
}
