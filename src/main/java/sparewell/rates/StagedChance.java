package sparewell.rates;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.special.Gamma;
import sparewell.rates.LossForecast.Stage;
import sparewell.rates.LossForecast.StagedStock;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;

/**
 * Chance that stocks last through one stage after the other while more is bought in between.
 *
 * <p>In each of many futures drawn from the fit ({@link RateFutures}) a style's rate on each trip,
 * the extra variation of each stretch, Gamma(&kappa; days, mean 1), and its items' shares,
 * Dirichlet, are drawn; given these the losses of an item are Poisson, so that the chance that its
 * running total stays within what there is at each stage is a finite sum, not a draw. The futures
 * are the same for whatever stock is asked about: more pieces never lower a chance.
 */
final class StagedChance {
  private static final long SEED = 20260420L;

  /** Larger stocks are judged at each stage alone, by the least chance of all. */
  private static final int LARGE = 300;

  private final RateFutures futures;
  private final ToIntFunction<String> number;
  private final Function<Exposure, RateFit.Term> term;
  private final ToDoubleFunction<ItemId> weight;

  /**
   * Prepares.
   *
   * @param number of a style in the fit
   * @param term of an exposure in the fit
   * @param weight Dirichlet parameter of an item
   */
  StagedChance(
      RateFutures futures,
      ToIntFunction<String> number,
      Function<Exposure, RateFit.Term> term,
      ToDoubleFunction<ItemId> weight) {
    this.futures = futures;
    this.number = number;
    this.term = term;
    this.weight = weight;
  }

  /** Chance that nothing ran out up to and including each stage. */
  double[] chances(List<StagedStock> stocks, int stages) {
    double[][] all = new double[futures.count()][stages];
    for (double[] future : all) {
      Arrays.fill(future, 1);
    }
    stocks.forEach(stock -> times(all, stock));
    double[] chances = new double[stages];
    for (double[] future : all) {
      for (int j = 0; j < stages; j++) {
        chances[j] += future[j] / all.length;
      }
    }
    return chances;
  }

  private void times(double[][] all, StagedStock stock) {
    int style = number.applyAsInt(stock.style());
    int[] steps =
        stock.stages().stream()
            .flatMap(stage -> stage.exposures().stream())
            .mapToInt(Exposure::stepsAhead)
            .sorted()
            .distinct()
            .toArray();
    Map<ItemId, int[]> limits = limits(stock.stages());
    if (steps.length == 0 || limits.isEmpty()) {
      return;
    }
    int stages = stock.stages().size();
    RandomGenerator random = new Well19937c(SEED + style);
    for (int k = 0; k < all.length; k++) {
      double[] rates = futures.rates(k, style, steps, random);
      Map<ItemId, double[]> means = means(k, stock.stages(), steps, rates, random);
      for (Map.Entry<ItemId, int[]> item : limits.entrySet()) {
        double[] expected = means.get(item.getKey());
        if (expected != null) {
          double[] lasts = lasts(expected, item.getValue());
          for (int j = 0; j < stages; j++) {
            all[k][j] *= lasts[j];
          }
        }
      }
    }
  }

  /** Pieces of each item watched, by stage; an item keeps what it has until a stage says more. */
  private static Map<ItemId, int[]> limits(List<Stage> stages) {
    Map<ItemId, int[]> limits = new TreeMap<>();
    for (int j = stages.size() - 1; j >= 0; j--) {
      for (Map.Entry<ItemId, Integer> named : stages.get(j).pieces().entrySet()) {
        int[] pieces = limits.computeIfAbsent(named.getKey(), item -> new int[stages.size()]);
        int until = j + 1;
        while (until < pieces.length && !stages.get(until).pieces().containsKey(named.getKey())) {
          until++;
        }
        // Before the first stage that names it, an item has what it has there.
        Arrays.fill(pieces, 0, j, named.getValue());
        Arrays.fill(pieces, j, until, named.getValue());
      }
    }
    return limits;
  }

  /** Expected losses of each item at each stage in a future. */
  private Map<ItemId, double[]> means(
      int future, List<Stage> stages, int[] steps, double[] rates, RandomGenerator random) {
    Map<ItemId, Double> logShares = new TreeMap<>();
    Map<ItemId, double[]> means = new TreeMap<>();
    for (int j = 0; j < stages.size(); j++) {
      for (Exposure exposure : stages.get(j).exposures()) {
        RateFit.Term use = term.apply(exposure);
        double extra = gamma(futures.size(future) * use.days(), random);
        if (exposure.hours() == 0 || exposure.among().isEmpty()) {
          continue;
        }
        double mean =
            rates[Arrays.binarySearch(steps, exposure.stepsAhead())]
                * use.hours()
                * futures.multiplier(future, use.cover())
                * extra;
        double top = Double.NEGATIVE_INFINITY;
        for (ItemId item : exposure.among()) {
          double log =
              logShares.computeIfAbsent(item, key -> logGamma(weight.applyAsDouble(key), random));
          top = Math.max(top, log);
        }
        double sum = 0;
        for (ItemId item : exposure.among()) {
          sum += Math.exp(logShares.get(item) - top);
        }
        for (ItemId item : exposure.among()) {
          means.computeIfAbsent(item, key -> new double[stages.size()])[j] +=
              mean * Math.exp(logShares.get(item) - top) / sum;
        }
      }
    }
    return means;
  }

  /** A Gamma(size, mean 1) number. */
  private static double gamma(double size, RandomGenerator random) {
    return Math.exp(logGamma(size, random)) / size;
  }

  /** ln of a Gamma(shape, scale 1) number, which may itself be too small for a double. */
  private static double logGamma(double shape, RandomGenerator random) {
    double more = new GammaDistribution(random, shape + 1, 1).sample();
    return Math.log(more) + Math.log(1 - random.nextDouble()) / shape;
  }

  /** Chances that a running sum of Poisson counts stays within limits up to each stage. */
  static double[] lasts(double[] means, int[] limits) {
    double[] lasts = new double[means.length];
    int most = Arrays.stream(limits).max().orElse(0);
    if (most > LARGE) {
      double passed = 0;
      double least = 1;
      for (int j = 0; j < means.length; j++) {
        passed += means[j];
        if (passed > 0) {
          least = Math.min(least, Gamma.regularizedGammaQ(limits[j] + 1.0, passed));
        }
        lasts[j] = least;
      }
      return lasts;
    }
    double[] chance = new double[most + 1]; // of so many lost, and none ran out so far
    chance[0] = 1;
    for (int j = 0; j < means.length; j++) {
      double[] next = new double[most + 1];
      double mass = Math.exp(-means[j]);
      for (int lost = 0; lost <= most && mass > 0; lost++) {
        for (int n = lost; n <= most; n++) {
          next[n] += mass * chance[n - lost];
        }
        mass *= means[j] / (lost + 1);
      }
      for (int n = 0; n <= most; n++) {
        if (n > limits[j]) {
          next[n] = 0;
        }
        lasts[j] += next[n];
      }
      chance = next;
    }
    return lasts;
  }
}
