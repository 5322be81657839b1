package sparewell.workbook.demo;

import java.util.Random;

/**
 * Seeded draws from the distributions of the simulator.
 *
 * <p>Only {@link Random}, whose sequence the Java platform specifies, and {@link StrictMath}: the
 * same seed gives the same season on every machine.
 */
final class Dice {
  private final Random random;

  Dice(long seed) {
    random = new Random(seed);
  }

  /** Uniform in [0, 1). */
  double uniform() {
    return random.nextDouble();
  }

  /** Uniform among {@code low..high}, both included. */
  int between(int low, int high) {
    return low + random.nextInt(high - low + 1);
  }

  /**
   * Gamma with mean {@code shape} (scale 1).
   *
   * @see "Marsaglia and Tsang (2000), A simple method for generating gamma variables, ACM TOMS 26"
   */
  double gamma(double shape) {
    if (shape < 1) {
      return gamma(shape + 1) * StrictMath.pow(1 - uniform(), 1 / shape);
    }
    double d = shape - 1.0 / 3;
    double c = 1 / StrictMath.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double v = 1 + c * x;
      if (v > 0) {
        v = v * v * v;
        double u = 1 - uniform();
        if (StrictMath.log(u) < 0.5 * x * x + d - d * v + d * StrictMath.log(v)) {
          return d * v;
        }
      }
    }
  }

  /** Poisson by multiplication of uniforms (Knuth), good for means of a few dozen. */
  int poisson(double mean) {
    double limit = StrictMath.exp(-mean);
    int count = 0;
    for (double product = 1 - uniform(); product > limit; product *= 1 - uniform()) {
      count++;
    }
    return count;
  }

  /** Negative binomial with that mean and variance mean + mean^2 / size. */
  int negativeBinomial(double mean, double size) {
    return mean == 0 ? 0 : poisson(gamma(size) * mean / size);
  }

  /** Index drawn with chances in proportion to the weights. */
  int pick(double... weights) {
    double total = 0;
    for (double weight : weights) {
      total += weight;
    }
    double left = uniform() * total;
    for (int i = 0; i < weights.length - 1; i++) {
      left -= weights[i];
      if (left < 0) {
        return i;
      }
    }
    return weights.length - 1;
  }
}
