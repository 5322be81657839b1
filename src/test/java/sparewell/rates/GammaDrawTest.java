package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

class GammaDrawTest {
  private static java.util.random.RandomGenerator javas(RandomGenerator library) {
    return new java.util.random.RandomGenerator() {
      @Override
      public long nextLong() {
        return library.nextLong();
      }

      @Override
      public double nextDouble() {
        return library.nextDouble();
      }

      @Override
      public double nextGaussian() {
        return library.nextGaussian();
      }
    };
  }

  /** Commons Math draws by the same method, so that equal seeds give equal numbers. */
  @Test
  void drawsWhatTheLibraryDraws() {
    java.util.random.RandomGenerator own = javas(new Well19937c(5));
    RandomGenerator library = new Well19937c(5);
    for (int i = 0; i < 20_000; i++) {
      double shape = 1 + (i % 200) / 20.0;
      double drawn = new GammaDistribution(library, shape, 1).sample();
      assertEquals(drawn, GammaDraw.atLeast1(shape, own), 1e-12 * drawn);
    }
  }

  /** Shapes below 1, where most numbers are tiny: mean and variance are the shape. */
  @Test
  void smallShapesKeepMeanAndVariance() {
    SplittableRandom random = new SplittableRandom(6);
    int count = 200_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < count; i++) {
      double drawn = Math.exp(GammaDraw.log(0.3, random));
      sum += drawn;
      squares += drawn * drawn;
    }
    double mean = sum / count;
    assertEquals(0.3, mean, 5 * Math.sqrt(0.3 / count));
    assertEquals(0.3, squares / count - mean * mean, 0.01);
  }
}
