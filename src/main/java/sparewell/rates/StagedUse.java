package sparewell.rates;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import sparewell.numerics.CountDistribution;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;

/**
 * What is expected to be lost of a style at several stages, in each of many futures: rate of the
 * trip &times; hours &times; multiplier of the cover &times; extra variation; and whether its items
 * last.
 */
final class StagedUse {
  /** Larger stocks are counted in bundles of pieces. */
  private static final int LARGE = 600;

  private static final double SURE = 1 - 1e-9;
  private static final double HARDLY_SHORT = 1 - 1e-5; // chances above count as independent
  private static final double HARDLY = 1e-3; // chances below are not scaled
  private static final double NO_MASS = 1e-12; // Poisson chances beyond their mean that count

  private final ItemFutures items;
  private final List<List<Exposure>> stages;
  private final double[][][] losses; // by stage and exposure, in each future
  private final Map<ItemId, CountDistribution> alone;
  private final Map<Asked, Lasting> lasting = new ConcurrentHashMap<>();

  private record Asked(ItemId item, List<Integer> limits) {}

  /**
   * How an item lasts.
   *
   * @param chances by future, then stage; empty where it is sure
   * @param scale its known chance at the first stage, over the mean of the futures
   */
  record Lasting(double[] chances, double scale) {}

  /**
   * Draws.
   *
   * @param stages exposures of the style at each
   * @param alone losses of each item at the first
   */
  StagedUse(
      RateFutures futures,
      ItemFutures items,
      int style,
      List<List<Exposure>> stages,
      Function<Exposure, RateFit.Term> term,
      Map<ItemId, CountDistribution> alone) {
    this.alone = alone;
    this.items = items;
    this.stages = stages;
    int[] steps =
        stages.stream()
            .flatMap(List::stream)
            .mapToInt(Exposure::stepsAhead)
            .sorted()
            .distinct()
            .toArray();
    double[][] rates = futures.rates(style, steps);
    losses = new double[stages.size()][][];
    // Each exposure has its own random numbers, so that those to come do not change those before.
    long seed = style;
    for (int j = 0; j < losses.length; j++) {
      losses[j] = new double[stages.get(j).size()][];
      for (int e = 0; e < losses[j].length; e++) {
        Exposure exposure = stages.get(j).get(e);
        int step = Arrays.binarySearch(steps, exposure.stepsAhead());
        seed = seed * 31 + 7;
        losses[j][e] = futures.losses(rates, step, term.apply(exposure), seed);
      }
    }
  }

  /** Chances that an item stays within limits up to each stage. */
  Lasting lasts(ItemId item, List<Integer> limits) {
    return lasting.computeIfAbsent(new Asked(item, limits), this::lasts);
  }

  private Lasting lasts(Asked asked) {
    int[] limits = asked.limits().stream().mapToInt(Integer::intValue).toArray();
    CountDistribution losses = alone.get(asked.item());
    if (limits.length == 1 && losses != null && losses.atMost(limits[0]) > HARDLY_SHORT) {
      return new Lasting(new double[0], losses.atMost(limits[0]));
    }
    double[] lasts = lasts(means(asked.item()), limits);
    if (Arrays.stream(lasts).allMatch(chance -> chance > SURE)) {
      return new Lasting(new double[0], 1);
    }
    double told = 0;
    for (int i = 0; i < lasts.length; i += limits.length) {
      told += lasts[i] / items.count();
    }
    boolean tells = losses != null && told > HARDLY;
    return new Lasting(lasts, tells ? losses.atMost(limits[0]) / told : 1);
  }

  /** How many numbers are held. */
  long held() {
    long uses = Arrays.stream(losses).mapToLong(stage -> stage.length).sum();
    long asked = lasting.values().stream().filter(each -> each.chances().length > 0).count();
    return (uses + asked * losses.length) * items.count();
  }

  /** Expected losses of an item, by future, then stage. */
  private double[] means(ItemId item) {
    double[] means = new double[items.count() * losses.length];
    for (int j = 0; j < losses.length; j++) {
      for (int e = 0; e < losses[j].length; e++) {
        if (stages.get(j).get(e).among().contains(item)) {
          double[] share = items.shares(item, stages.get(j).get(e).among());
          for (int k = 0; k < share.length; k++) {
            means[k * losses.length + j] += losses[j][e][k] * share[k];
          }
        }
      }
    }
    return means;
  }

  /**
   * Chances that a running sum of Poisson counts stays within limits up to each stage.
   *
   * @param means by future, then stage
   */
  static double[] lasts(double[] means, int[] limits) {
    int bundle = 1 + Arrays.stream(limits).max().orElse(0) / LARGE;
    double[] lasts = new double[means.length];
    for (int future = 0; future < means.length; future += limits.length) {
      double[] lost = {1}; // chance of so many so far, and none ran out
      for (int j = 0; j < limits.length; j++) {
        lost = add(lost, means[future + j] / bundle, limits[j] / bundle);
        for (double chance : lost) {
          lasts[future + j] += chance;
        }
      }
    }
    return lasts;
  }

  /** Chances of the sum of a count and a Poisson one, up to so many. */
  private static double[] add(double[] lost, double mean, int most) {
    double[] sum = new double[most + 1];
    double mass = Math.exp(-mean);
    int end = 0;
    for (int n = 0; n <= most && (mass > NO_MASS || n <= mean); n++) {
      end = Math.min(most + 1, n + lost.length);
      for (int i = n; i < end; i++) {
        sum[i] += lost[i - n] * mass;
      }
      mass *= mean / (n + 1);
    }
    return Arrays.copyOf(sum, end);
  }
}
