package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The best set for a place against a dynamic program over both limits. */
class KnapsackTest {
  private static final double CLOSE = 1e-9;

  /** Boxes with whole-numbered volumes and loads, so that the dynamic program is exact. */
  private record Offers(
      double[] worth, long[] volume, long[] load, long volumeRoom, long loadRoom) {
    static Offers random(Random random, int count, int largest) {
      double[] worth = random.doubles(count, -1, 9).toArray();
      long[] volume = random.longs(count, 0, largest).toArray();
      long[] load = random.longs(count, 0, largest).toArray();
      long volumeRoom = (long) (Arrays.stream(volume).sum() * (0.1 + random.nextDouble()));
      long loadRoom = (long) (Arrays.stream(load).sum() * (0.1 + random.nextDouble()));
      return new Offers(worth, volume, load, volumeRoom, loadRoom);
    }

    double best() {
      double[][] most = new double[(int) volumeRoom + 1][(int) loadRoom + 1];
      for (int box = 0; box < worth.length; box++) {
        for (int v = (int) volumeRoom; v >= volume[box]; v--) {
          for (int w = (int) loadRoom; w >= load[box]; w--) {
            double with = most[v - (int) volume[box]][w - (int) load[box]] + worth[box];
            most[v][w] = Math.max(most[v][w], with);
          }
        }
      }
      return most[(int) volumeRoom][(int) loadRoom];
    }

    double solve(Knapsack knapsack) {
      knapsack.clear();
      for (int at = 0; at < worth.length; at++) {
        int box = knapsack.turn(at);
        knapsack.offer(box, worth[box], volume[box], load[box], volumeRoom, loadRoom);
      }
      return knapsack.solve(volumeRoom, loadRoom);
    }

    /** Worth of the set found, which must keep both limits. */
    double found(Knapsack knapsack) {
      double sum = 0;
      long volumes = 0;
      long loads = 0;
      for (int index = 0; index < knapsack.count(); index++) {
        int box = knapsack.boxAt(index);
        assertTrue(worth[box] > 0 && volume[box] <= volumeRoom && load[box] <= loadRoom);
        if (knapsack.holds(index)) {
          sum += worth[box];
          volumes += volume[box];
          loads += load[box];
        }
      }
      assertTrue(volumes <= volumeRoom && loads <= loadRoom, "the set keeps both limits");
      return sum;
    }
  }

  @Test
  void findsTheBestSetWithinBothLimits() {
    for (int seed = 0; seed < 400; seed++) {
      Random random = new Random(seed);
      Offers offers = Offers.random(random, 1 + random.nextInt(12), 2 + random.nextInt(30));
      Knapsack knapsack = new Knapsack(offers.worth.length);
      double best = offers.best();
      assertEquals(best, offers.solve(knapsack), CLOSE, "seed " + seed);
      assertEquals(best, offers.found(knapsack), CLOSE, "seed " + seed);
    }
  }

  @Test
  void asksAgainAtOtherWorthsInTheOrderOfTheLastAnswer() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      Offers offers = Offers.random(random, 12, 20);
      Knapsack knapsack = new Knapsack(12);
      for (int call = 0; call < 12; call++) {
        double best = offers.best();
        assertEquals(best, offers.solve(knapsack), CLOSE, "seed " + seed + " call " + call);
        assertEquals(best, offers.found(knapsack), CLOSE);
        int[] answered = new int[knapsack.count()];
        for (int index = 0; index < answered.length; index++) {
          answered[index] = knapsack.boxAt(index);
        }
        int[] before = turns(knapsack);
        knapsack.remember();
        int[] after = turns(knapsack);
        assertEquals(
            Arrays.toString(answered), Arrays.toString(Arrays.copyOf(after, answered.length)));
        // Those that were not offered follow in the order they had.
        int[] rest =
            Arrays.stream(before)
                .filter(box -> Arrays.stream(answered).noneMatch(taken -> taken == box))
                .toArray();
        assertEquals(
            Arrays.toString(rest),
            Arrays.toString(Arrays.copyOfRange(after, answered.length, after.length)));
        for (int box = 0; box < 12; box++) {
          offers.worth[box] += random.nextDouble() - 0.5;
        }
      }
    }
  }

  private static int[] turns(Knapsack knapsack) {
    int[] order = new int[12];
    for (int at = 0; at < order.length; at++) {
      order[at] = knapsack.turn(at);
    }
    return order;
  }

  @Test
  void withinATolerance() {
    for (int seed = 0; seed < 200; seed++) {
      Offers offers = Offers.random(new Random(seed), 12, 20);
      Knapsack knapsack = new Knapsack(12);
      knapsack.tolerance(1.5);
      double best = offers.best();
      double bound = offers.solve(knapsack);
      assertTrue(bound >= best - CLOSE, "seed " + seed);
      assertTrue(bound <= offers.found(knapsack) + 1.5 + CLOSE, "seed " + seed);
    }
  }

  @Test
  void aToleranceSavesWork() {
    Offers offers = Offers.random(new Random(3), 30, 20);
    Knapsack exact = new Knapsack(30);
    offers.solve(exact);
    Knapsack near = new Knapsack(30);
    near.tolerance(1.5);
    offers.solve(near);
    assertTrue(near.work() < exact.work(), near.work() + " against " + exact.work());
  }

  @Test
  void whereTheToleranceIsMoreThanAllWorthNothingIsTaken() {
    Offers offers = Offers.random(new Random(3), 30, 20);
    Knapsack knapsack = new Knapsack(30);
    assertTrue(offers.solve(knapsack) > 0 && offers.found(knapsack) > 0);
    knapsack.tolerance(1_000);
    double bound = offers.solve(knapsack);
    assertEquals(0, offers.found(knapsack), 0);
    assertTrue(bound >= offers.best() && bound <= 1_000);
  }

  @Test
  void anyMixGivesTheSameAnswer() {
    Offers offers = Offers.random(new Random(5), 14, 20);
    double best = offers.best();
    for (double share : new double[] {-1, 0, 0.2, 0.8, 1, 2}) {
      Knapsack knapsack = new Knapsack(14);
      knapsack.mix(share);
      assertEquals(best, offers.solve(knapsack), CLOSE, "share " + share);
    }
  }

  @Test
  void cutShortItStillGivesABoundAndASet() {
    Random random = new Random(1);
    int count = 90;
    // Worth goes with size, so that the bound rules hardly anything out.
    long[] volume = random.longs(count, 20, 40).toArray();
    long[] load = random.longs(count, 20, 40).toArray();
    double[] worth = new double[count];
    for (int box = 0; box < count; box++) {
      worth[box] = volume[box] + load[box] + 0.01 * random.nextDouble();
    }
    worth[7] = 900; // one that is worth far more than its room
    Offers offers = new Offers(worth, volume, load, 1010, 1009);
    Knapsack knapsack = new Knapsack(count);
    double bound = offers.solve(knapsack);
    double best = offers.best();
    assertTrue(bound >= best, "a bound");
    assertTrue(bound <= 1010 + 1009 + 1 + 900, "that of the limits");
    double found = offers.found(knapsack);
    assertTrue(found <= best + CLOSE && found > 0.9 * best, "a set, and a good one");
    assertTrue(knapsack.work() > 3_000 && knapsack.work() < 3_200, "work " + knapsack.work());
  }

  @Test
  void theBoundSparesMostOfTheSearch() {
    long work = 0;
    Knapsack knapsack = new Knapsack(30);
    for (int seed = 0; seed < 50; seed++) {
      Offers offers = Offers.random(new Random(seed), 30, 20);
      knapsack.tolerance(0);
      offers.solve(knapsack);
      knapsack.remember();
      work = knapsack.work();
    }
    assertTrue(work < 50 * 600, "some hundred sets a call, not 2^30: " + work);
  }

  @Test
  void whatFitsAltogetherIsTakenWithoutASearch() {
    Offers offers =
        new Offers(new double[] {3, 0, 4}, new long[] {5, 1, 6}, new long[] {2, 1, 3}, 11, 5);
    Knapsack knapsack = new Knapsack(3);
    assertEquals(7, offers.solve(knapsack), 0);
    assertEquals(7, offers.found(knapsack), 0);
    assertEquals(2, knapsack.count(), "one without worth is not offered");
    assertEquals(3, knapsack.work());
    Offers one = new Offers(new double[] {3}, new long[] {5}, new long[] {6}, 5, 5);
    Knapsack small = new Knapsack(1);
    assertEquals(0, one.solve(small), 0);
    assertEquals(0, small.count(), "nor one that is too heavy alone");
    assertFalse(small.work() == 0);
  }
}
