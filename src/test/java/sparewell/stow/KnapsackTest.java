package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
