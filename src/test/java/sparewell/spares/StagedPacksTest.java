package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;

class StagedPacksTest {
  /**
   * Every other choice of packs that keeps the risk needs as many packs, and holds no fewer early.
   */
  @Test
  void noOtherChoiceThatKeepsTheRiskIsBetter() {
    Random random = new Random(8);
    int best = 0;
    for (int round = 0; round < 200; round++) {
      List<CountDistribution> losses = new ArrayList<>();
      double mean = 0;
      for (int k = 0; k < 3; k++) {
        mean += 0.2 + 2 * random.nextDouble();
        losses.add(KnownForecast.negBin(mean, 0.8 + 2 * random.nextDouble()));
      }
      int held = random.nextInt(4);
      int perPack = 1 + random.nextInt(4);
      double chance = 0.8 + 0.15 * random.nextDouble();
      int[] packs = StagedPacks.of(losses, held, perPack, chance);
      assertTrue(risk(losses, held, perPack, packs) <= 1 - chance + 1e-9);
      int fewest = packs[2];
      assertTrue(
          fewest == 0 || losses.get(2).above(held + (fewest - 1) * perPack) > 0.6 * (1 - chance),
          "a pack fewer would not do");
      int least = Integer.MAX_VALUE;
      for (int one = 0; one <= fewest; one++) {
        for (int two = one; two <= fewest; two++) {
          int[] other = {one, two, fewest};
          if (risk(losses, held, perPack, other) <= 1 - chance + 1e-9) {
            least = Math.min(least, one + two);
          }
        }
      }
      assertTrue(packs[0] + packs[1] <= least + 1, "at most a pack an event earlier");
      best += packs[0] + packs[1] == least ? 1 : 0;
    }
    assertTrue(best >= 190, best + " of 200 bought as late as can be");
  }

  /** What the class promises: the sum over last events before a purchase, and the last of all. */
  private static double risk(List<CountDistribution> losses, int held, int perPack, int[] packs) {
    double risk = 0;
    for (int k = 0; k < packs.length; k++) {
      if (k == packs.length - 1 || packs[k] < packs[k + 1]) {
        risk += losses.get(k).above(held + packs[k] * perPack);
      }
    }
    return risk;
  }

  @Test
  void enoughIsEnough() {
    List<CountDistribution> losses = List.of(KnownForecast.poisson(1), KnownForecast.poisson(2));
    assertEquals(List.of(0, 0), list(StagedPacks.of(losses, 9, 2, 0.95)));
    // qpois(0.95, 2) = 5, R 4.2.2: three packs of two; ppois(0, 1) = 0.37 asks for the first now.
    assertEquals(3, list(StagedPacks.of(losses, 0, 2, 0.95)).get(1));
  }

  private static List<Integer> list(int[] packs) {
    return java.util.Arrays.stream(packs).boxed().toList();
  }
}
