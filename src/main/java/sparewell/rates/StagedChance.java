package sparewell.rates;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
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
public final class StagedChance {
  private static final long SEED = 20260420L;
  private static final long MOST_KEPT = 8_000_000; // numbers, 64 MB

  /** Larger stocks are judged at each stage alone, by the least chance of all. */
  private static final int LARGE = 300;

  /** Poisson chances beyond their mean that no sum of these notices. */
  private static final double NO_MASS = 1e-18;

  /** ln of a chance of running out that no mean over the futures notices. */
  private static final double SURE = Math.log(1e-9);

  private final RateFutures futures;
  private final ToIntFunction<String> number;
  private final Function<Exposure, RateFit.Term> term;
  private final ToDoubleFunction<ItemId> weight;
  private final Map<Uses, Asked> known = new ConcurrentHashMap<>();
  private final AtomicLong kept = new AtomicLong(); // numbers held in what is known

  /** Exposures of a style, by stage. */
  private record Uses(int style, List<List<Exposure>> stages) {}

  /**
   * Expected losses of a style, and the chances that its items last.
   *
   * @param means expected losses by future, item and stage
   * @param lasting by item and its limits: chance that it lasts, by future and stage
   */
  private record Asked(StagedUse use, double[][][] means, Map<List<Integer>, double[][]> lasting) {}

  /**
   * Prepares.
   *
   * @param number of a style in the fit
   * @param term of an exposure in the fit
   * @param weight Dirichlet parameter of an item
   */
  public StagedChance(
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
  public double[] chances(List<StagedStock> stocks, int stages) {
    double[][] lasting = new double[futures.count()][stages];
    for (double[] future : lasting) {
      Arrays.fill(future, 1);
    }
    stocks.forEach(stock -> times(lasting, stock));
    double[] mean = new double[stages];
    for (double[] future : lasting) {
      for (int j = 0; j < stages; j++) {
        mean[j] += future[j] / lasting.length;
      }
    }
    return mean;
  }

  /** Multiplies chances by future and stage with those that a style lasts. */
  private void times(double[][] lasting, StagedStock stock) {
    if (kept.get() > MOST_KEPT) {
      known.clear();
      kept.set(0);
    }
    Uses uses =
        new Uses(
            number.applyAsInt(stock.style()),
            stock.stages().stream().map(Stage::exposures).toList());
    Asked asked = known.computeIfAbsent(uses, key -> asked(key.style(), stock));
    StagedUse use = asked.use();
    Map<ItemId, int[]> limits = limits(stock.stages());
    limits.keySet().removeIf(item -> use.number(item) < 0);
    if (limits.isEmpty()) {
      return;
    }
    limits.forEach(
        (item, limit) -> {
          double[][] lasts = lasts(asked, use.number(item), limit);
          for (int k = 0; k < lasting.length; k++) {
            for (int j = 0; j < limit.length; j++) {
              lasting[k][j] *= lasts[k][j];
            }
          }
        });
  }

  private double[][] lasts(Asked asked, int item, int[] limits) {
    List<Integer> key = new ArrayList<>(List.of(item));
    Arrays.stream(limits).forEach(key::add);
    return asked
        .lasting()
        .computeIfAbsent(
            key,
            fresh -> {
              kept.addAndGet((long) limits.length * futures.count());
              return Arrays.stream(asked.means())
                  .map(means -> lasts(means[item], limits))
                  .toArray(double[][]::new);
            });
  }

  private Asked asked(int style, StagedStock stock) {
    StagedUse use = new StagedUse(stock.stages(), term, weight);
    int[] steps = use.steps();
    double[][][] means = new double[futures.count()][][];
    // Each future has its own random numbers, so that stages to come do not change those before.
    SplittableRandom seeds = new SplittableRandom(SEED + style);
    for (int k = 0; k < means.length; k++) {
      SplittableRandom walk = seeds.split();
      double[] rates = futures.rates(k, style, steps, walk);
      means[k] = use.means(futures, k, rates, seeds.split());
    }
    kept.addAndGet((long) means.length * means[0].length * stock.stages().size());
    return new Asked(use, means, new ConcurrentHashMap<>());
  }

  /**
   * Pieces of each item watched, by stage; an item keeps what it has until a stage says more, and
   * has that of the first stage that names it before.
   */
  private static Map<ItemId, int[]> limits(List<Stage> stages) {
    Map<ItemId, int[]> limits = new TreeMap<>();
    for (int j = 0; j < stages.size(); j++) {
      for (Map.Entry<ItemId, Integer> named : stages.get(j).pieces().entrySet()) {
        int[] known = limits.get(named.getKey());
        int[] pieces = known == null ? new int[stages.size()] : known;
        Arrays.fill(pieces, known == null ? 0 : j, pieces.length, named.getValue());
        limits.put(named.getKey(), pieces);
      }
    }
    return limits;
  }

  /** Chances that a running sum of Poisson counts stays within limits up to each stage. */
  static double[] lasts(double[] means, int[] limits) {
    double[] lasts = new double[means.length];
    if (sure(means, limits)) {
      Arrays.fill(lasts, 1);
      return lasts;
    }
    if (Arrays.stream(limits).max().orElse(0) > LARGE) {
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
    // While the limit stays, only the total counts; where it changes, how many are lost so far.
    double[] chance = {1}; // of so many lost before the limit last changed, and none ran out
    double passed = 0;
    for (int j = 0; j < means.length; j++) {
      passed += means[j];
      if (j > 0 && means[j] == 0 && limits[j] == limits[j - 1] && !changes(limits, j)) {
        lasts[j] = lasts[j - 1];
        continue;
      }
      if (chance.length == 1 && !changes(limits, j)) {
        lasts[j] = chance[0] * within(passed, limits[j]);
        continue;
      }
      double[] mass = poisson(passed, limits[j]);
      if (changes(limits, j)) {
        chance = sum(chance, mass);
        lasts[j] = Arrays.stream(chance).sum();
        passed = 0;
        continue;
      }
      double within = 0;
      for (int lost = 0; lost <= limits[j]; lost++) {
        int before = limits[j] - lost;
        within += mass[lost];
        lasts[j] += before < chance.length ? chance[before] * within : 0;
      }
    }
    return lasts;
  }

  /**
   * True if every total is so small beside its limit that running out is next to impossible:
   * Chernoff's bound, P(N &ge; n) &le; e<sup>-m</sup> (e m / n)<sup>n</sup> for m below n.
   */
  private static boolean sure(double[] means, int[] limits) {
    double passed = 0;
    for (int j = 0; j < means.length; j++) {
      passed += means[j];
      double over = limits[j] + 1.0;
      if (passed >= over || over - passed + over * Math.log(passed / over) > SURE) {
        return false;
      }
    }
    return true;
  }

  private static boolean changes(int[] limits, int stage) {
    return stage < limits.length - 1 && limits[stage + 1] != limits[stage];
  }

  /** Poisson chance of at most so many. */
  private static double within(double mean, int most) {
    double mass = Math.exp(-mean);
    double sum = mass;
    for (int n = 1; n <= most && (mass > NO_MASS || n <= mean); n++) {
      mass = mass * mean / n;
      sum += mass;
    }
    return sum;
  }

  /** Poisson chances of 0 to most. */
  private static double[] poisson(double mean, int most) {
    double[] mass = new double[most + 1];
    mass[0] = Math.exp(-mean);
    for (int n = 1; n <= most && (mass[n - 1] > NO_MASS || n <= mean); n++) {
      mass[n] = mass[n - 1] * mean / n;
    }
    return mass;
  }

  /** Chances of the sum of two counts, up to where those of the second end. */
  private static double[] sum(double[] one, double[] two) {
    int end = two.length;
    while (end > 1 && two[end - 1] < NO_MASS) {
      end--;
    }
    double[] sum = new double[two.length];
    for (int n = 0; n < Math.min(one.length, two.length); n++) {
      for (int more = 0; more < Math.min(end, two.length - n); more++) {
        sum[n + more] += one[n] * two[more];
      }
    }
    return sum;
  }
}
