package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;

class StagedPacksTest {
  /**
   * Against every choice of packs that keeps the joint chance: as few in all, or one more; and of
   * what is bought before the last event, little more than must be.
   */
  @Test
  void asFewAsKeepTheChanceOrOneMore() {
    Random random = new Random(8);
    int fewest = 0;
    int early = 0;
    int leastEarly = 0;
    for (int round = 0; round < 100; round++) {
      double[] means = random.doubles(3, 0.2, 2.2).toArray();
      double shape = 0.8 + 2 * random.nextDouble();
      int held = random.nextInt(4);
      int perPack = 1 + random.nextInt(4);
      double chance = 0.8 + 0.15 * random.nextDouble();
      ToDoubleFunction<int[]> lasts = packs -> joint(means, shape, held, perPack, packs);
      int[] packs = StagedPacks.of(losses(means, shape), held, perPack, chance, lasts);
      assertTrue(lasts.applyAsDouble(packs) >= chance);
      int least = packs[2];
      int mustEarly = packs[0] + packs[1];
      for (int all = 0; all <= packs[2]; all++) {
        for (int two = 0; two <= all; two++) {
          for (int one = 0; one <= two; one++) {
            int[] other = {one, two, all};
            if (lasts.applyAsDouble(other) >= chance) {
              least = Math.min(least, all);
              mustEarly = all == packs[2] ? Math.min(mustEarly, one + two) : mustEarly;
            }
          }
        }
      }
      assertTrue(packs[2] - least <= 1, packs[2] + " where " + least + " would do");
      fewest += packs[2] == least ? 1 : 0;
      early += packs[0] + packs[1];
      leastEarly += mustEarly;
    }
    assertTrue(fewest >= 96, fewest + " of 100 with as few as can be");
    assertTrue(early <= 1.22 * leastEarly, early + " early where " + leastEarly + " would do");
  }

  /** Pieces lost through each event: a gamma rate that all share, so negative binomial. */
  private static List<CountDistribution> losses(double[] means, double shape) {
    List<CountDistribution> losses = new ArrayList<>();
    double mean = 0;
    for (double one : means) {
      mean += one;
      losses.add(KnownForecast.negBin(mean, shape));
    }
    return losses;
  }

  /** Chance of enough at each event: a negative multinomial, summed piece by piece. */
  private static double joint(double[] means, double shape, int held, int perPack, int[] packs) {
    double[] limit = Arrays.stream(packs).mapToDouble(p -> held + p * perPack).toArray();
    double all = shape + Arrays.stream(means).sum();
    double sum = 0;
    for (int a = 0; a <= limit[0]; a++) {
      for (int b = 0; a + b <= limit[1]; b++) {
        for (int c = 0; a + b + c <= limit[2]; c++) {
          sum +=
              Math.exp(
                  Gamma.logGamma(shape + a + b + c)
                      - Gamma.logGamma(shape)
                      - Gamma.logGamma(a + 1)
                      - Gamma.logGamma(b + 1)
                      - Gamma.logGamma(c + 1)
                      + shape * Math.log(shape / all)
                      + a * Math.log(means[0] / all)
                      + b * Math.log(means[1] / all)
                      + c * Math.log(means[2] / all));
        }
      }
    }
    return sum;
  }

  @Test
  void enoughIsEnough() {
    List<CountDistribution> losses = List.of(KnownForecast.poisson(1), KnownForecast.poisson(2));
    assertEquals(List.of(0, 0), list(StagedPacks.of(losses, 9, 2, 0.95, packs -> 1)));
    // qpois(0.95, 2) = 5, R 4.2.2: three packs of two; ppois(0, 1) = 0.37 asks for the first now.
    assertEquals(3, list(StagedPacks.of(losses, 0, 2, 0.95, packs -> 0)).get(1));
  }

  private static List<Integer> list(int[] packs) {
    return Arrays.stream(packs).boxed().toList();
  }
}
