package sparewell.rates;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
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

  /** 1/n: dividing takes most of the time of these sums. */
  private static final double[] OVER = new double[LARGE + 2];

  static {
    Arrays.setAll(OVER, n -> 1.0 / n);
  }

  /** Poisson chances beyond their mean that no sum of these notices. */
  private static final double NO_MASS = 1e-12;

  /** ln of a chance of running out that no mean over the futures notices. */
  private static final double SURE = Math.log(1e-9);

  private final RateFutures futures;
  private final ToIntFunction<String> number;
  private final Function<Exposure, RateFit.Term> term;
  private final ToDoubleFunction<ItemId> weight;
  private final Map<Uses, StagedUse> known = new ConcurrentHashMap<>();
  private final Map<Lasting, double[]> lasting = new ConcurrentHashMap<>();
  private final Map<ItemId, double[]> logShares = new ConcurrentHashMap<>();
  private final AtomicLong kept = new AtomicLong(); // numbers held in what is known

  /** Exposures of a style, by stage. */
  private record Uses(int style, List<List<Exposure>> stages) {}

  private record Lasting(StagedUse use, ItemId item, List<Integer> limits) {}

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
    double[] lasting = new double[futures.count() * stages]; // by future, then stage
    Arrays.fill(lasting, 1);
    stocks.forEach(stock -> times(lasting, stock));
    double[] mean = new double[stages];
    for (int i = 0; i < lasting.length; i++) {
      mean[i % stages] += lasting[i] / futures.count();
    }
    return mean;
  }

  /** Multiplies chances by future and stage with those that a style lasts. */
  private void times(double[] chances, StagedStock stock) {
    if (kept.get() > MOST_KEPT) {
      known.clear();
      lasting.clear();
      logShares.clear();
      kept.set(0);
    }
    Uses uses =
        new Uses(
            number.applyAsInt(stock.style()),
            stock.stages().stream().map(Stage::exposures).toList());
    StagedUse use = known.computeIfAbsent(uses, key -> use(key.style(), stock.stages()));
    limits(stock.stages())
        .forEach(
            (item, limits) -> {
              Lasting asked = new Lasting(use, item, Arrays.stream(limits).boxed().toList());
              double[] lasts =
                  lasting.computeIfAbsent(asked, key -> lastsOrSure(use.means(item), limits));
              for (int i = 0; i < lasts.length; i++) {
                chances[i] *= lasts[i];
              }
            });
  }

  private StagedUse use(int style, List<Stage> stages) {
    StagedUse use = new StagedUse(futures, style, stages, term, logShares, weight, SEED);
    kept.addAndGet(2 * use.held());
    return use;
  }

  /** The same as {@link #lasts}; empty where it is sure, or nothing is used. */
  private double[] lastsOrSure(double[] means, int[] limits) {
    double[] lasts = sure(means, limits) ? new double[0] : lasts(means, limits);
    kept.addAndGet(lasts.length);
    return lasts;
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

  /**
   * True if every total is so small beside its limit that running out is next to impossible in all
   * futures: Chernoff's bound, P(N &ge; n) &le; e<sup>-m</sup> (e m / n)<sup>n</sup> for m below n.
   */
  private static boolean sure(double[] means, int[] limits) {
    double[] largest = new double[limits.length];
    double passed = 0;
    for (int i = 0; i < means.length; i++) {
      int stage = i % limits.length;
      passed = stage == 0 ? means[i] : passed + means[i];
      largest[stage] = Math.max(largest[stage], passed);
    }
    for (int j = 0; j < limits.length; j++) {
      double over = limits[j] + 1.0;
      if (largest[j] >= over || over - largest[j] + over * Math.log(largest[j] / over) > SURE) {
        return false;
      }
    }
    return true;
  }

  /**
   * Chances that a running sum of Poisson counts stays within limits up to each stage.
   *
   * @param means by future, then stage
   */
  static double[] lasts(double[] means, int[] limits) {
    double[] lasts = new double[means.length];
    boolean large = Arrays.stream(limits).max().orElse(0) > LARGE;
    for (int future = 0; future < means.length; future += limits.length) {
      if (large) {
        byStage(means, future, limits, lasts);
      } else {
        throughout(means, future, limits, lasts);
      }
    }
    return lasts;
  }

  private static void byStage(double[] means, int future, int[] limits, double[] lasts) {
    double passed = 0;
    double least = 1;
    for (int j = 0; j < limits.length; j++) {
      passed += means[future + j];
      if (passed > 0) {
        least = Math.min(least, Gamma.regularizedGammaQ(limits[j] + 1.0, passed));
      }
      lasts[future + j] = least;
    }
  }

  /** While the limit stays, only the total counts; where it changes, how many are lost so far. */
  private static void throughout(double[] means, int future, int[] limits, double[] lasts) {
    double[] before = {1}; // chance of so many lost before the limit last changed, and none ran out
    double passed = 0;
    for (int j = 0; j < limits.length; j++) {
      double mean = means[future + j];
      passed += mean;
      if (j < limits.length - 1 && limits[j + 1] != limits[j]) {
        before = sum(before, passed, limits[j]);
        passed = 0;
        for (double chance : before) {
          lasts[future + j] += chance;
        }
      } else if (j > 0 && mean == 0 && limits[j] == limits[j - 1]) {
        lasts[future + j] = lasts[future + j - 1];
      } else {
        lasts[future + j] = within(before, passed, limits[j]);
      }
    }
  }

  /** Chance that a count and a Poisson one are at most so many together. */
  private static double within(double[] one, double mean, int most) {
    double mass = Math.exp(-mean);
    double within = 0;
    double sum = 0;
    int rest = most;
    for (int n = 0; n <= most && (mass > NO_MASS || n <= mean); n++) {
      within += mass;
      rest = most - n;
      sum += rest < one.length ? one[rest] * within : 0;
      mass *= mean * OVER[n + 1];
    }
    for (int n = Math.min(rest, one.length) - 1; n >= 0; n--) {
      sum += one[n] * within;
    }
    return sum;
  }

  /** Chances of the sum of a count and a Poisson one, up to so many. */
  private static double[] sum(double[] one, double mean, int most) {
    double[] sum = new double[most + 1];
    double mass = Math.exp(-mean);
    int end = 0;
    for (int n = 0; n <= most && (mass > NO_MASS || n <= mean); n++) {
      end = Math.min(most + 1, n + one.length);
      for (int i = n; i < end; i++) {
        sum[i] += one[i - n] * mass;
      }
      mass *= mean * OVER[n + 1];
    }
    return Arrays.copyOf(sum, end);
  }
}
