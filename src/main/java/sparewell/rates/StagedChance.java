package sparewell.rates;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
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

  /** Poisson chances beyond their mean that no sum of these notices. */
  private static final double NO_MASS = 1e-18;

  /** Chance of running out that no mean over the futures notices. */
  private static final double SURE = 1e-9;

  /** By pieces: the mean up to which running out of them is less likely than that. */
  private static final double[] SURE_MEAN = sureMeans();

  /** Most numbers to remember: 8 MB. */
  private static final long MOST_KNOWN = 1_000_000;

  private record Known(List<StagedStock> ways, double[][][] chances) {}

  private final Map<String, Known> known = new HashMap<>();
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
    return chancesOfEach(List.of(stocks), stages).get(0);
  }

  /**
   * The same for several ways to stock the same uses.
   *
   * @param ways the same styles with the same exposures in each
   */
  List<double[]> chancesOfEach(List<List<StagedStock>> ways, int stages) {
    double[][][] all = ones(ways.size(), stages);
    for (int i = 0; i < ways.get(0).size(); i++) {
      int at = i;
      times(all, style(ways.stream().map(way -> way.get(at)).toList(), stages));
    }
    return Arrays.stream(all).map(StagedChance::mean).toList();
  }

  private double[][][] ones(int ways, int stages) {
    double[][][] all = new double[ways][futures.count()][stages];
    for (double[][] way : all) {
      for (double[] future : way) {
        Arrays.fill(future, 1);
      }
    }
    return all;
  }

  private static void times(double[][][] all, double[][][] more) {
    for (int way = 0; way < all.length; way++) {
      for (int k = 0; k < all[way].length; k++) {
        for (int j = 0; j < all[way][k].length; j++) {
          all[way][k][j] *= more[way][k][j];
        }
      }
    }
  }

  /** Chances that a style lasts, by way, future and stage; the last answers are remembered. */
  private double[][][] style(List<StagedStock> ways, int stages) {
    String style = ways.get(0).style();
    synchronized (known) {
      Known there = known.get(style);
      if (there != null && there.ways().equals(ways)) {
        return there.chances();
      }
    }
    double[][][] chances = ones(ways.size(), stages);
    times(chances, ways);
    synchronized (known) {
      if ((known.size() + 1L) * ways.size() * futures.count() * stages < MOST_KNOWN) {
        known.put(style, new Known(ways, chances));
      }
    }
    return chances;
  }

  private static double[] mean(double[][] futures) {
    double[] mean = new double[futures[0].length];
    for (double[] future : futures) {
      for (int j = 0; j < mean.length; j++) {
        mean[j] += future[j] / futures.length;
      }
    }
    return mean;
  }

  private void times(double[][][] all, List<StagedStock> ways) {
    StagedStock any = ways.get(0);
    int style = number.applyAsInt(any.style());
    StagedUse use = new StagedUse(any.stages(), term, weight);
    int[] steps = use.steps();
    List<Map<ItemId, int[]>> limits = ways.stream().map(way -> limits(way.stages())).toList();
    limits.forEach(way -> way.keySet().removeIf(item -> use.number(item) < 0));
    if (limits.stream().allMatch(Map::isEmpty)) {
      return;
    }
    RandomGenerator random = new Well19937c(SEED + style);
    for (int k = 0; k < futures.count(); k++) {
      double[] rates = futures.rates(k, style, steps, random);
      double[][] means = use.means(futures, k, rates, random);
      for (int way = 0; way < all.length; way++) {
        for (Map.Entry<ItemId, int[]> item : limits.get(way).entrySet()) {
          double[] lasts = lasts(means[use.number(item.getKey())], item.getValue());
          for (int j = 0; j < lasts.length; j++) {
            all[way][k][j] *= lasts[j];
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

  /** Whether every total is so small beside its limit that running out is next to impossible. */
  private static boolean sure(double[] means, int[] limits) {
    double passed = 0;
    for (int j = 0; j < means.length; j++) {
      passed += means[j];
      if (passed > SURE_MEAN[Math.max(0, Math.min(limits[j], LARGE))]) {
        return false;
      }
    }
    return true;
  }

  /**
   * Beyond the mean m, Poisson chances fall at least as a geometric series of ratio m / (n + 2), so
   * that P(N > n) &le; P(N = n + 1) / (1 - m / (n + 2)); m is sought below 0.8 (n + 2), by halving.
   */
  private static double[] sureMeans() {
    double[] means = new double[LARGE + 1];
    double logFactorial = 0;
    for (int n = 0; n <= LARGE; n++) {
      logFactorial += Math.log(n + 1.0);
      double low = 0;
      double high = 0.8 * (n + 2);
      for (int halving = 0; halving < 40; halving++) {
        double mean = (low + high) / 2;
        boolean sure = (n + 1) * Math.log(mean) - mean - logFactorial < Math.log(SURE / 5);
        low = sure ? mean : low;
        high = sure ? high : mean;
      }
      means[n] = low;
    }
    return means;
  }

  private static boolean changes(int[] limits, int stage) {
    return stage < limits.length - 1 && limits[stage + 1] != limits[stage];
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
    double[] sum = new double[two.length];
    for (int n = 0; n < Math.min(one.length, two.length); n++) {
      for (int more = 0; n + more < two.length; more++) {
        sum[n + more] += one[n] * two[more];
      }
    }
    return sum;
  }
}
