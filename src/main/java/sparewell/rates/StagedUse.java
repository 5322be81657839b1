package sparewell.rates;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import sparewell.rates.LossForecast.Stage;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;

/**
 * What is expected to be lost of a style's items at several stages, in each of many futures: rate
 * of the trip &times; hours &times; multiplier of the cover &times; extra variation &times; share.
 */
final class StagedUse {
  private final RateFutures futures;
  private final Map<ItemId, double[]> logShares; // by future, up to a common summand
  private final ToDoubleFunction<ItemId> weight;
  private final long seed;
  private final Map<ItemId, double[]> means = new HashMap<>();

  /**
   * Draws.
   *
   * @param logShares of items drawn so far; receives more
   * @param weight Dirichlet parameter of an item
   */
  StagedUse(
      RateFutures futures,
      int style,
      List<Stage> stages,
      Function<Exposure, RateFit.Term> term,
      Map<ItemId, double[]> logShares,
      ToDoubleFunction<ItemId> weight,
      long seed) {
    this.futures = futures;
    this.logShares = logShares;
    this.weight = weight;
    this.seed = seed;
    int[] steps =
        stages.stream()
            .flatMap(stage -> stage.exposures().stream())
            .mapToInt(Exposure::stepsAhead)
            .sorted()
            .distinct()
            .toArray();
    double[][] rates = futures.rates(style, steps);
    // Each exposure has its own random numbers, so that those to come do not change those before.
    SplittableRandom extras = new SplittableRandom(seed + style);
    Map<List<ItemId>, double[][]> shares = new HashMap<>();
    for (int j = 0; j < stages.size(); j++) {
      for (Exposure exposure : stages.get(j).exposures()) {
        SplittableRandom extra = extras.split();
        int step = Arrays.binarySearch(steps, exposure.stepsAhead());
        if (exposure.hours() > 0 && !exposure.among().isEmpty()) {
          double[] losses = losses(term.apply(exposure), rates, step, extra);
          double[][] its = shares.computeIfAbsent(exposure.among(), this::shares);
          for (int i = 0; i < its.length; i++) {
            add(exposure.among().get(i), losses, its[i], j, stages.size());
          }
        }
      }
    }
  }

  /** Expected losses of an item, by future, then stage; empty where it is not used. */
  double[] means(ItemId item) {
    return means.getOrDefault(item, new double[0]);
  }

  /** How many numbers are held. */
  long held() {
    return means.values().stream().mapToLong(each -> each.length).sum();
  }

  private double[] losses(RateFit.Term term, double[][] rates, int step, SplittableRandom random) {
    double[] losses = new double[rates.length];
    for (int k = 0; k < losses.length; k++) {
      double extra = GammaDraw.mean1(futures.size(k) * term.days(), random);
      losses[k] = rates[k][step] * term.hours() * futures.multiplier(k, term.cover()) * extra;
    }
    return losses;
  }

  private void add(ItemId item, double[] losses, double[] share, int stage, int stages) {
    double[] its = means.computeIfAbsent(item, key -> new double[losses.length * stages]);
    for (int k = 0; k < losses.length; k++) {
      its[k * stages + stage] += losses[k] * share[k];
    }
  }

  /** Dirichlet shares of items used together: of each, by future. */
  private double[][] shares(List<ItemId> among) {
    double[][] shares = new double[among.size()][];
    double[] top = new double[futures.count()];
    Arrays.fill(top, Double.NEGATIVE_INFINITY);
    for (int i = 0; i < shares.length; i++) {
      shares[i] = logShares.computeIfAbsent(among.get(i), this::logShares).clone();
      for (int k = 0; k < top.length; k++) {
        top[k] = Math.max(top[k], shares[i][k]);
      }
    }
    double[] sum = new double[top.length];
    for (double[] share : shares) {
      for (int k = 0; k < sum.length; k++) {
        share[k] = Math.exp(share[k] - top[k]);
        sum[k] += share[k];
      }
    }
    for (double[] share : shares) {
      for (int k = 0; k < sum.length; k++) {
        share[k] /= sum[k];
      }
    }
    return shares;
  }

  private double[] logShares(ItemId item) {
    SplittableRandom random = new SplittableRandom(seed ^ item.toString().hashCode());
    double shape = weight.applyAsDouble(item);
    double[] logs = new double[futures.count()];
    for (int k = 0; k < logs.length; k++) {
      logs[k] = GammaDraw.log(shape, random);
    }
    return logs;
  }
}
