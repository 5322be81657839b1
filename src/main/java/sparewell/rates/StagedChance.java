package sparewell.rates;

import java.util.Arrays;
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
    double[][][] all = new double[ways.size()][futures.count()][stages];
    for (double[][] way : all) {
      for (double[] future : way) {
        Arrays.fill(future, 1);
      }
    }
    for (int i = 0; i < ways.get(0).size(); i++) {
      int at = i;
      times(all, ways.stream().map(way -> way.get(at)).toList());
    }
    return Arrays.stream(all).map(StagedChance::mean).toList();
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
