package sparewell.rates;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import sparewell.rates.LossForecast.Stage;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;

/** How a style is used at several stages, all looked up once: futures ask for it by thousands. */
final class StagedUse {
  private final int stages;
  private final int[] steps;
  private final List<Use> uses = new ArrayList<>();
  private final Map<ItemId, Integer> numbers = new LinkedHashMap<>();
  private final List<int[]> groups = new ArrayList<>(); // items that are used together
  private final double[] weights;

  /**
   * One exposure.
   *
   * @param step place of its trip among the steps
   * @param group the items that it is among; -1 where nothing is used
   */
  private record Use(int stage, int step, RateFit.Term term, int group) {}

  StagedUse(
      List<Stage> of, Function<Exposure, RateFit.Term> term, ToDoubleFunction<ItemId> weight) {
    stages = of.size();
    steps =
        of.stream()
            .flatMap(stage -> stage.exposures().stream())
            .mapToInt(Exposure::stepsAhead)
            .sorted()
            .distinct()
            .toArray();
    Map<List<ItemId>, Integer> known = new LinkedHashMap<>();
    for (int j = 0; j < stages; j++) {
      for (Exposure exposure : of.get(j).exposures()) {
        boolean used = exposure.hours() > 0 && !exposure.among().isEmpty();
        int group = used ? known.computeIfAbsent(exposure.among(), this::group) : -1;
        int step = Arrays.binarySearch(steps, exposure.stepsAhead());
        uses.add(new Use(j, step, term.apply(exposure), group));
      }
    }
    weights = numbers.keySet().stream().mapToDouble(weight).toArray();
  }

  private int group(List<ItemId> among) {
    groups.add(
        among.stream()
            .mapToInt(item -> numbers.computeIfAbsent(item, key -> numbers.size()))
            .toArray());
    return groups.size() - 1;
  }

  /** Trips ahead, ascending. */
  int[] steps() {
    return steps.clone();
  }

  /** Number of an item in {@link #means}; -1 where it is not used. */
  int number(ItemId item) {
    return numbers.getOrDefault(item, -1);
  }

  /**
   * Expected losses of each item at each stage in a future.
   *
   * @param rates of the style at the steps
   */
  double[][] means(RateFutures futures, int future, double[] rates, RandomGenerator random) {
    double[] logShares = new double[weights.length];
    Arrays.fill(logShares, Double.NaN);
    double[][] shares = new double[groups.size()][];
    double[][] means = new double[weights.length][stages];
    for (Use use : uses) {
      double extra = GammaDraw.mean1(futures.size(future) * use.term().days(), random);
      if (use.group() < 0) {
        continue;
      }
      double mean =
          rates[use.step()]
              * use.term().hours()
              * futures.multiplier(future, use.term().cover())
              * extra;
      int[] group = groups.get(use.group());
      if (shares[use.group()] == null) {
        shares[use.group()] = shares(group, logShares, random);
      }
      for (int i = 0; i < group.length; i++) {
        means[group[i]][use.stage()] += mean * shares[use.group()][i];
      }
    }
    return means;
  }

  /** Dirichlet shares of a group; draws the items that no group before drew. */
  private double[] shares(int[] group, double[] logShares, RandomGenerator random) {
    double top = Double.NEGATIVE_INFINITY;
    for (int item : group) {
      if (Double.isNaN(logShares[item])) {
        logShares[item] = GammaDraw.log(weights[item], random);
      }
      top = Math.max(top, logShares[item]);
    }
    double[] shares = new double[group.length];
    double sum = 0;
    for (int i = 0; i < group.length; i++) {
      shares[i] = Math.exp(logShares[group[i]] - top);
      sum += shares[i];
    }
    for (int i = 0; i < group.length; i++) {
      shares[i] /= sum;
    }
    return shares;
  }
}
