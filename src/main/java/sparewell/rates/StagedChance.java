package sparewell.rates;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import sparewell.numerics.CountDistribution;
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
 * running total stays within what there is at each stage is a finite sum, not a draw. What the
 * futures say of all items together is scaled by what they say of each alone at the first stage,
 * where its chance is known: a ratio estimate, which halves the error. The futures are the same for
 * whatever stock is asked about.
 */
public final class StagedChance {
  private static final long MOST_KEPT = 8_000_000; // numbers, 64 MB

  private final RateFutures futures;
  private final ToIntFunction<String> number;
  private final Function<Exposure, RateFit.Term> term;
  private final ToDoubleFunction<ItemId> weight;
  private final LossesOfItems alone;
  private final Map<Uses, StagedUse> known = new ConcurrentHashMap<>();
  private volatile ItemFutures items;

  /** Losses of each item of a style, as far as they are known. */
  public interface LossesOfItems {
    /** Of those that the exposures name. */
    Map<ItemId, CountDistribution> of(String style, List<Exposure> exposures);
  }

  /** Exposures of a style, by stage. */
  private record Uses(int style, List<List<Exposure>> stages) {}

  /**
   * Prepares.
   *
   * @param number of a style in the fit
   * @param term of an exposure in the fit
   * @param weight Dirichlet parameter of an item
   * @param alone losses of each item, to scale by
   */
  public StagedChance(
      RateFutures futures,
      ToIntFunction<String> number,
      Function<Exposure, RateFit.Term> term,
      ToDoubleFunction<ItemId> weight,
      LossesOfItems alone) {
    this.futures = futures;
    this.number = number;
    this.term = term;
    this.weight = weight;
    this.alone = alone;
    items = new ItemFutures(futures, weight);
  }

  /** Chance that nothing ran out up to and including each stage. */
  public double[] chances(List<StagedStock> stocks, int stages) {
    double[] lasting = new double[futures.count() * stages]; // by future, then stage
    Arrays.fill(lasting, 1);
    double scale = 1;
    for (StagedStock stock : stocks) {
      scale *= times(lasting, stock);
    }
    double[] mean = new double[stages];
    for (int i = 0; i < lasting.length; i++) {
      mean[i % stages] += lasting[i] / futures.count() * scale;
    }
    return Arrays.stream(mean).map(chance -> Math.min(1, chance)).toArray();
  }

  /** Multiplies chances by future and stage with those that a style lasts; what to scale by. */
  private double times(double[] chances, StagedStock stock) {
    if (items.held() + known.values().stream().mapToLong(StagedUse::held).sum() > MOST_KEPT) {
      known.clear();
      items = new ItemFutures(futures, weight);
    }
    List<List<Exposure>> used =
        stock.stages().stream()
            .map(stage -> stage.exposures().stream().filter(Exposure::used).toList())
            .toList();
    StagedUse use =
        known.computeIfAbsent(
            new Uses(number.applyAsInt(stock.style()), used),
            uses ->
                new StagedUse(
                    futures,
                    items,
                    uses.style(),
                    used,
                    term,
                    alone.of(stock.style(), used.get(0))));
    double scale = 1;
    for (Map.Entry<ItemId, int[]> limit : limits(stock.stages()).entrySet()) {
      StagedUse.Lasting lasting =
          use.lasts(limit.getKey(), Arrays.stream(limit.getValue()).boxed().toList());
      scale *= lasting.scale();
      for (int i = 0; i < lasting.chances().length; i++) {
        chances[i] *= lasting.chances()[i];
      }
    }
    return scale;
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
}
