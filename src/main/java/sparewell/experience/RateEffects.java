package sparewell.experience;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Random effects of loss rates between anglers by style, from counts, so that logs without a loss
 * are used exactly.
 *
 * <p>ln &lambda; of a style in a log is t-distributed with 5 degrees of freedom around the style's
 * typical log rate m, with a scale s that all styles share; its likelihood is &lambda;<sup>y</sup>
 * e<sup>-h&lambda;</sup>. Heavy tails give little weight to a log unlike the others. Sums over a
 * grid of log rates 0.125 apart, accurate to about 1e-6 as no log counts for more than 25 pieces.
 *
 * @param styles typical log rate of each style
 * @param logBetween ln of the standard deviation between anglers, its centre
 * @param logBetweenSpread posterior standard deviation of that ln
 */
record RateEffects(SortedMap<Key, Normal> styles, double logBetween, double logBetweenSpread) {
  /** Degrees of freedom of the distribution between anglers. */
  static final double DEGREES = 5;

  /**
   * Standard deviation that such a scale stands for, over the scale. Logs with few losses show
   * their spread by its variance alone; only far more losses than are common would show its shape,
   * and ask for 1.14.
   */
  static final double TO_NORMAL = Math.sqrt(DEGREES / (DEGREES - 2));

  private static final double STEP = 0.125;
  private static final double FIRST = -10;
  private static final int NODES = 125;
  private static final double SCALE_OF_SCALE = 1; // half-normal prior
  private static final double[] SCALES = {
    0.12, 0.15, 0.19, 0.24, 0.3, 0.375, 0.47, 0.59, 0.74, 0.93, 1.2, 1.5
  };
  private static final double[][] KERNELS = kernels();

  /** By scale: chance of a whole number of steps, the first and last taking what lies beyond. */
  private static double[][] kernels() {
    double[][] kernels = new double[SCALES.length][NODES];
    for (int k = 0; k < SCALES.length; k++) {
      double sum = 0;
      for (int d = 0; d < NODES; d++) {
        double z = d * STEP / SCALES[k];
        kernels[k][d] = Math.pow(1 + z * z / DEGREES, -(DEGREES + 1) / 2);
        sum += d == 0 ? kernels[k][d] : 2 * kernels[k][d];
      }
      for (int d = 0; d < NODES; d++) {
        kernels[k][d] /= sum;
      }
    }
    return kernels;
  }

  private static double node(int i) {
    return FIRST + i * STEP;
  }

  /**
   * Fits the typical rates and their common scale.
   *
   * @param cells of each style
   * @param before of each style: mean and variance of its typical log rate before its own rows
   */
  static RateEffects of(SortedMap<Key, List<Pool.Cell>> cells, SortedMap<Key, Normal> before) {
    SortedMap<Key, double[][]> logs = new TreeMap<>();
    double[] scale = new double[SCALES.length];
    for (int k = 0; k < scale.length; k++) {
      double z = SCALES[k] / SCALE_OF_SCALE;
      scale[k] = Math.log(SCALES[k]) - z * z / 2; // even steps of ln s
    }
    cells.forEach(
        (key, of) -> {
          double[][] log = logPosterior(of, before.get(key));
          logs.put(key, log);
          for (int k = 0; k < scale.length; k++) {
            scale[k] += logSum(log[k]);
          }
        });
    double all = logSum(scale);
    for (int k = 0; k < scale.length; k++) {
      scale[k] = Math.exp(scale[k] - all);
    }
    SortedMap<Key, Normal> styles = new TreeMap<>();
    logs.forEach((key, log) -> styles.put(key, typical(log, scale)));
    return between(styles, scale);
  }

  /** By scale and node of m: ln of likelihood and prior together, without constants. */
  private static double[][] logPosterior(List<Pool.Cell> cells, Normal before) {
    double[][] log = new double[SCALES.length][NODES];
    for (double[] row : log) {
      for (int i = 0; i < NODES; i++) {
        double away = node(i) - before.mean();
        row[i] = -away * away / (2 * before.variance());
      }
    }
    double[] likelihood = new double[NODES];
    for (Pool.Cell cell : cells) {
      double peak = likelihood(cell, likelihood);
      for (int k = 0; k < SCALES.length; k++) {
        double[] kernel = KERNELS[k];
        for (int i = 0; i < NODES; i++) {
          double sum = 0;
          for (int j = 0; j < NODES; j++) {
            sum += likelihood[j] * kernel[Math.abs(i - j)];
          }
          log[k][i] += cell.logs() * (Math.log(Math.max(sum, 1e-300)) + peak);
        }
      }
    }
    return log;
  }

  /** Fills in the likelihood over its peak; gives the ln of that. */
  private static double likelihood(Pool.Cell cell, double[] likelihood) {
    double pieces = Math.max(0, cell.precision() - 0.5);
    double hours = cell.precision() * Math.exp(-cell.estimate());
    double peak = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < NODES; i++) {
      likelihood[i] = pieces * node(i) - hours * Math.exp(node(i));
      peak = Math.max(peak, likelihood[i]);
    }
    for (int i = 0; i < NODES; i++) {
      likelihood[i] = Math.exp(likelihood[i] - peak);
    }
    return peak;
  }

  private static double logSum(double[] logs) {
    double best = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      best = Math.max(best, log);
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - best);
    }
    return best + Math.log(sum);
  }

  private static Normal typical(double[][] log, double[] scale) {
    double mean = 0;
    double square = 0;
    for (int k = 0; k < scale.length; k++) {
      double all = logSum(log[k]);
      for (int i = 0; i < NODES; i++) {
        double weight = scale[k] * Math.exp(log[k][i] - all);
        mean += weight * node(i);
        square += weight * node(i) * node(i);
      }
    }
    // Variance within a step of the grid.
    return new Normal(mean, square - mean * mean + STEP * STEP / 12);
  }

  /** Centre of the log such that with its spread the mean variance is right. */
  private static RateEffects between(SortedMap<Key, Normal> styles, double[] scale) {
    double mean = 0;
    double square = 0;
    for (int k = 0; k < SCALES.length; k++) {
      double deviation = TO_NORMAL * SCALES[k];
      mean += scale[k] * Math.log(deviation);
      square += scale[k] * deviation * deviation;
    }
    double variance = 0;
    for (int k = 0; k < SCALES.length; k++) {
      double away = Math.log(TO_NORMAL * SCALES[k]) - mean;
      variance += scale[k] * away * away;
    }
    return new RateEffects(styles, Math.log(square) / 2 - variance, Math.sqrt(variance));
  }
}
