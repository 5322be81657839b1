package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.special.Erf;

/**
 * Futures drawn jointly from a fit: in each, hyperparameters, means of the families, and a rate of
 * every style over the log and on each trip ahead. Seeded, so that equal fits give equal futures.
 * Each quantity takes one number from each of as many equal parts of its distribution as there are
 * futures, in random order: a mean over them is nearer to the truth than over free ones.
 *
 * @see "McKay, Beckman, Conover, A comparison of three methods for selecting values of input
 *     variables, Technometrics 21 (1979)"
 */
public final class RateFutures {
  private static final long SEED = 20260419L;

  private final RateFit fit;
  private final HyperPosterior.Draw[] draw; // of each future
  private final double[] even; // middles of as many equal parts of (0, 1) as there are futures
  private final double[] logEven;
  private final double[] normal; // standard normal numbers there
  private final int[][] mean; // by family: number on the grid of its mean in each future
  private final Map<Integer, double[]> rates = new ConcurrentHashMap<>(); // over the log, by style

  /**
   * Draws.
   *
   * @param count futures, &gt; 0; a chance told by them has a standard error of at most 0.5 /
   *     &radic;count
   */
  public RateFutures(RateFit fit, int count) {
    this.fit = fit;
    draw = new HyperPosterior.Draw[count];
    List<HyperPosterior.Draw> draws = fit.draws();
    int at = 0;
    double passed = draws.get(0).weight();
    for (int k = 0; k < count; k++) {
      while (passed < (k + 0.5) / count && at < draws.size() - 1) {
        passed += draws.get(++at).weight();
      }
      draw[k] = draws.get(at);
    }
    even = new double[count];
    for (int k = 0; k < count; k++) {
      even[k] = (k + 0.5) / count;
    }
    logEven = Arrays.stream(even).map(Math::log).toArray();
    normal = Arrays.stream(even).map(part -> Math.sqrt(2) * Erf.erfInv(2 * part - 1)).toArray();
    mean = new int[fit.input().families()][count];
    for (int f = 0; f < mean.length; f++) {
      double[] part = shuffled(even, SEED + f);
      for (int k = 0; k < count; k++) {
        Conditional given = draw[k].given();
        mean[f][k] = given.mean(f, pick(given.meanWeights(f), part[k]));
      }
    }
  }

  /** How many there are. */
  public int count() {
    return draw.length;
  }

  /** Size of the negative binomial for one day. */
  public double size(int future) {
    return draw[future].given().hyper().size();
  }

  /** Multiplier of a cover, as in {@link RateFit.Term}. */
  public double multiplier(int future, int cover) {
    return draw[future].multiplier(cover);
  }

  /**
   * Rates of a style on trips ahead in each future, pieces per hour at the mix of covers.
   *
   * @param steps trips from the last one logged, ascending, each &ge; 1
   * @return by future and step; further steps do not change those before
   */
  public double[][] rates(int style, int[] steps) {
    double[] rate = rates.computeIfAbsent(style, this::overTheLog).clone();
    double[][] ahead = new double[rate.length][steps.length];
    double before = 0;
    for (int i = 0; i < steps.length; i++) {
      double variance = fit.walk().variance(style, steps[i] - 1);
      double more = Math.max(0, variance - before);
      double[] step = shuffled(normal, SEED ^ (style + 1L) << 32 ^ i);
      for (int k = 0; k < rate.length; k++) {
        rate[k] *= Math.exp(Math.sqrt(more) * step[k] - more / 2);
        ahead[k][i] = rate[k];
      }
      before = variance;
    }
    return ahead;
  }

  /**
   * Pieces expected to be lost over a term, with the extra variation of its days, in each future.
   *
   * @param rates as {@link #rates} gave them
   * @param step which of its steps
   */
  public double[] losses(double[][] rates, int step, RateFit.Term term, long seed) {
    double[] losses = logGamma(k -> size(k) * term.days(), seed);
    for (int k = 0; k < losses.length; k++) {
      double extra = Math.exp(losses[k]) / (size(k) * term.days());
      losses[k] = extra * rates[k][step] * term.hours() * multiplier(k, term.cover());
    }
    return losses;
  }

  /**
   * ln of Gamma(shape, scale 1) numbers, one for each future; as G(a) = G(a + 1) U<sup>1/a</sup>
   * with U even in (0, 1), and G(a + 1) by Wilson and Hilferty's cube root, off by half a
   * thousandth of a probability.
   *
   * @param shape of each future
   */
  public double[] logGamma(IntToDoubleFunction shape, long seed) {
    double[] z = shuffled(normal, SEED + 2 * seed);
    double[] logU = shuffled(logEven, SEED + 2 * seed + 1);
    double[] log = new double[draw.length];
    for (int k = 0; k < log.length; k++) {
      double a = shape.applyAsDouble(k);
      double ninth = 1 / (9 * (a + 1));
      double root = Math.max(1e-3, 1 - ninth + Math.sqrt(ninth) * z[k]);
      log[k] = Math.log(a + 1) + 3 * Math.log(root) + logU[k] / a;
    }
    return log;
  }

  private double[] overTheLog(int style) {
    double[] part = shuffled(even, SEED - 1 - style);
    int family = fit.input().familyOfStyle().get(style);
    double[] drawn = new double[draw.length];
    for (int k = 0; k < drawn.length; k++) {
      double[] weights = draw[k].given().given(style, mean[family][k]);
      drawn[k] = fit.data().styles[style].rate[pick(weights, part[k])];
    }
    return drawn;
  }

  /** Values, one for each future, in random order. */
  private static double[] shuffled(double[] values, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] shuffled = new double[values.length];
    for (int k = 0; k < values.length; k++) {
      int other = random.nextInt(k + 1);
      shuffled[k] = shuffled[other];
      shuffled[other] = values[k];
    }
    return shuffled;
  }

  /** Where the running sum of the weights, 1 in all, passes a part. */
  private static int pick(double[] weights, double part) {
    double left = part;
    int i = 0;
    while (i < weights.length - 1 && left >= weights[i]) {
      left -= weights[i++];
    }
    return i;
  }
}
